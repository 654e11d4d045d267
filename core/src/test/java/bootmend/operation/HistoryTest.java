package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.fat.FatVolume;
import bootmend.fixtures.SparseDisk;
import bootmend.request.CardRequest;
import bootmend.workplace.MemoryWorkplace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** What is kept of each change, which card it belongs to, and going back to any of them. */
class HistoryTest {

    private static final String READER = "/dev/reader";
    private static final String TUNED = "arm_freq=2000\nover_voltage=4\n";
    private static final String RESET = "#arm_freq=2000\n#over_voltage=4\n";

    private final MemoryWorkplace bench = new MemoryWorkplace();

    @AfterEach
    void close() throws IOException {
        bench.close();
    }

    @Test
    void theNewestChangeComesFirstWithItsLines() throws Exception {
        bench.insert(READER, MemoryWorkplace.card(TUNED));
        bench.reset(READER);
        bench.undo(READER, ChangeRequest.Undo.LAST);

        List<HistoryEntry> history = history();

        assertThat(history).extracting(HistoryEntry::number).containsExactly(2, 1);
        assertThat(history).extracting(HistoryEntry::undone).containsExactly(false, true);
        assertThat(history.get(1).lines())
                .extracting(line -> line.after().orElseThrow())
                .containsExactly("#arm_freq=2000", "#over_voltage=4");
    }

    @Test
    void undoTakesBackTheLastChangeThatStillStands() throws Exception {
        SparseDisk card = MemoryWorkplace.card(TUNED);
        SparseDisk before = card.copy();
        bench.insert(READER, card);
        bench.reset(READER);
        bench.undo(READER, ChangeRequest.Undo.LAST);

        assertThat(card.differingSectors(before)).isEmpty();
        assertThatThrownBy(() -> bench.undo(READER, ChangeRequest.Undo.LAST))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("no change to this card");
    }

    @Test
    void undoToGoesToAnyPointAndForwardAgain() throws Exception {
        SparseDisk card = MemoryWorkplace.card(TUNED);
        bench.insert(READER, card);
        bench.reset(READER);

        bench.undo(READER, ChangeRequest.Undo.to(0));
        assertThat(config(card)).isEqualTo(TUNED);

        bench.undo(READER, ChangeRequest.Undo.to(1));
        assertThat(config(card)).isEqualTo(RESET);
        assertThat(history())
                .extracting(HistoryEntry::title)
                .containsExactly("back to after change 1", "back to before change 1", "back to stock");
    }

    @Test
    void aNumberThatTheHistoryDoesNotHaveIsRefused() throws Exception {
        bench.insert(READER, MemoryWorkplace.card(TUNED));
        assertThatThrownBy(() -> bench.undo(READER, ChangeRequest.Undo.to(1)))
                .isInstanceOfSatisfying(
                        CardException.class, e -> assertThat(e.kind()).isEqualTo(CardException.Kind.USAGE));
    }

    @Test
    void cardsWrittenFromOneImageKeepTheirOwnHistory() throws Exception {
        SparseDisk first = MemoryWorkplace.card(TUNED);
        SparseDisk second = first.copy();
        SparseDisk third = first.copy();
        bench.insert(READER, first);
        bench.reset(READER);
        bench.insert(READER, second);
        bench.reset(READER);

        assertThat(history()).as("one change each, though the reader saw two").hasSize(1);
        bench.undo(READER, ChangeRequest.Undo.LAST);
        assertThat(config(second)).isEqualTo(TUNED);

        bench.insert(READER, first);
        bench.undo(READER, ChangeRequest.Undo.LAST);
        assertThat(config(first)).isEqualTo(TUNED);

        bench.insert(READER, third);
        assertThatThrownBy(() -> bench.undo(READER, ChangeRequest.Undo.LAST)).isInstanceOf(CardException.class);
        assertThat(config(third)).isEqualTo(TUNED);
    }

    @Test
    void aCardThatMovedToAnotherReaderIsStillKnown() throws Exception {
        SparseDisk card = MemoryWorkplace.card(TUNED);
        bench.insert(READER, card);
        bench.reset(READER);
        bench.insert("/dev/other", card);
        bench.undo("/dev/other", ChangeRequest.Undo.LAST);
        assertThat(config(card)).isEqualTo(TUNED);
    }

    @Test
    void undoFallsBackToTheFileWhereOtherSectorsChangedSince() throws Exception {
        SparseDisk card = MemoryWorkplace.card(TUNED);
        bench.insert(READER, card);
        bench.reset(READER);
        // As a board does that started once and noted in the FAT how it was put away: entry 1, clean-shutdown bit.
        long fat = 512;
        card.patch(fat + 3, (byte) (card.toBytes(fat + 3, 1)[0] & 0x7F));

        bench.undo(READER, ChangeRequest.Undo.LAST);

        assertThat(config(card)).isEqualTo(TUNED);
        assertThat(card.toBytes(fat + 3, 1)[0] & 0x80)
                .as("the board's own mark stays")
                .isZero();
    }

    @Test
    void aConfigFileThatWasEditedSinceIsNotOverwritten() throws Exception {
        SparseDisk card = MemoryWorkplace.card(TUNED);
        bench.insert(READER, card);
        bench.reset(READER);
        byte[] edited = "#arm_freq=1234".getBytes(StandardCharsets.US_ASCII);
        card.patch(placeOf(card, RESET), edited);

        assertThatThrownBy(() -> bench.undo(READER, ChangeRequest.Undo.LAST)).isInstanceOf(CardException.class);
        assertThat(config(card)).startsWith("#arm_freq=1234");
    }

    private List<HistoryEntry> history() throws CardException, IOException {
        return new HistoryJob(bench.workplace())
                .run(CardRequest.of(Path.of(READER)))
                .changes();
    }

    private static long placeOf(SparseDisk card, String text) {
        String all = new String(card.toBytes(0, 1 << 20), StandardCharsets.ISO_8859_1);
        return all.indexOf(text);
    }

    private static String config(SparseDisk card) throws IOException {
        FatVolume volume = FatVolume.open(card);
        return new String(
                volume.read(volume.find("config.txt").orElseThrow(), 4096).bytes(), StandardCharsets.US_ASCII);
    }
}
