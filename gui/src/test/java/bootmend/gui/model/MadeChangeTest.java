package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.config.LineEnd;
import bootmend.gui.SmallCards;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.operation.FileEdit;
import bootmend.operation.HistoryEntry;
import bootmend.operation.LineChange;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How changes are listed, and the way back to any of them. */
class MadeChangeTest {

    @TempDir
    private Path folder;

    @Test
    void aChangeIsListedAndGoneBackToAndForthAgain() throws IOException {
        CardModel card =
                new ModelDesk(folder.resolve("home")).open(SmallCards.write(folder, "lab.img", "arm_freq=2000\n"));
        assertThat(card.history().get().value().orElseThrow().changes()).isEmpty();
        card.change().choose(ChangeOrder.of(ChangeRequest.ToStock.PLAIN));
        card.change().make();

        MadeChange made = newest(card);
        assertThat(made.title()).isEqualTo("back to stock");
        assertThat(made.lines()).containsExactly("config.txt line 1:  arm_freq=2000  \u2192  #arm_freq=2000");
        assertThat(made.undone()).isFalse();
        assertThat(Path.of(made.undoRecord())).exists();

        make(card, MadeChange.beforeTheFirst());
        assertThat(config(card)).containsExactly("arm_freq=2000");
        make(card, made.goBack());
        assertThat(config(card)).containsExactly("#arm_freq=2000");
        assertThat(card.history().get().value().orElseThrow().changes()).hasSize(3);
    }

    @Test
    void theTimeIsLocalAndManyLinesAreInterrupted() {
        LineChange line = new LineChange(
                "config.txt",
                1200,
                Optional.empty(),
                Optional.of(new LineChange.Line("gpu_mem=64".getBytes(StandardCharsets.US_ASCII), LineEnd.LF)));
        HistoryEntry entry = new HistoryEntry(
                4,
                Instant.parse("2026-02-03T23:30:00Z"),
                "repair",
                List.of(new FileEdit(
                        "config.txt", FileEdit.Kind.CHANGED, Optional.of("config.txt"), Collections.nCopies(15, line))),
                1,
                true,
                "/home/record");
        MadeChange made = MadeChange.of(entry, ZoneOffset.ofHours(2), ModelDesk.WORDS);
        assertThat(made.when()).isEqualTo("2026-02-04 01:30:00");
        assertThat(made.lines()).hasSize(13).last().isEqualTo("and 3 more lines");
        assertThat(made.lines().get(0)).isEqualTo("config.txt line 1200:  (new line)  \u2192  gpu_mem=64");
        assertThat(made.size()).isEqualTo("1 sector written");
    }

    @Test
    void theSameLineCanBePointedAtTwice() throws IOException {
        CardModel card =
                new ModelDesk(folder.resolve("home")).open(SmallCards.write(folder, "lab.img", "arm_freq=2000\n"));
        List<LinePlace> seen = new ArrayList<>();
        card.pointedAt().watch(place -> place.ifPresent(seen::add));
        card.pointAt(new LinePlace("config.txt", 1));
        card.pointAt(new LinePlace("config.txt", 1));
        assertThat(seen).hasSize(2);
    }

    private static MadeChange newest(CardModel card) {
        return MadeChange.of(
                card.history().get().value().orElseThrow().changes().get(0), ZoneId.systemDefault(), ModelDesk.WORDS);
    }

    private static void make(CardModel card, ChangeOrder wish) {
        card.change().choose(wish);
        card.change().make();
        assertThat(card.change().state().get()).isInstanceOf(ChangeState.Done.class);
    }

    private static List<String> config(CardModel card) {
        return card.sheet().get().value().orElseThrow().files().get(0).lines().stream()
                .map(line -> line.text())
                .toList();
    }
}
