package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.fat.FatVolume;
import bootmend.finding.Finding;
import bootmend.finding.Severity;
import bootmend.fixtures.SparseDisk;
import bootmend.request.CardRequest;
import bootmend.workplace.MemoryWorkplace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Single settings set on cards, and one card's tuning given to others. */
class EditJobTest {

    private static final CardRequest CART = CardRequest.of(Path.of("/cards/cart.img"));
    private static final CardRequest MAST = CardRequest.of(Path.of("/cards/mast.img"));

    private final MemoryWorkplace bench = new MemoryWorkplace();
    private SparseDisk cart;

    @BeforeEach
    void insertCards() throws IOException {
        cart = MemoryWorkplace.card("# arm cart\r\n[pi4]\r\narm_freq=1750\r\nover_voltage=2\r\n[all]\r\n");
        bench.insert(CART.card().toString(), cart);
        bench.insert(MAST.card().toString(), MemoryWorkplace.card("dtparam=spi=on\ngpu_freq=550\n"));
    }

    @AfterEach
    void close() throws IOException {
        bench.close();
    }

    @Test
    void theValuesBytesAloneChangeAndUndoBringsThemBack() throws Exception {
        SparseDisk before = cart.copy();
        TriedChange change = TriedChange.of(bench.workplace(), CART, onPi4("arm_freq=1500"));
        assertThat(change.lines()).singleElement().satisfies(line -> {
            assertThat(line.before()).hasValue("arm_freq=1750");
            assertThat(line.after()).hasValue("arm_freq=1500");
        });
        change.apply();
        assertThat(config()).isEqualTo("# arm cart\r\n[pi4]\r\narm_freq=1500\r\nover_voltage=2\r\n[all]\r\n");
        assertThat(TriedChange.of(bench.workplace(), CART, onPi4("arm_freq=1500"))
                        .isNothing())
                .isTrue();

        bench.undo(CART.card().toString(), ChangeRequest.Undo.LAST);
        assertThat(cart.differingSectors(before)).isEmpty();
    }

    /** Stock 1500 MHz, and at least 600: "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446. */
    @Test
    void aBlockerInTheNewValueIsRefusedUnlessTheRiskIsTaken() throws Exception {
        assertThatThrownBy(() -> TriedChange.of(bench.workplace(), CART, onPi4("arm_freq=5000")))
                .isInstanceOfSatisfying(
                        CardException.class,
                        e -> assertThat(e.isRefusedFor(NextStep.Allow.BLOCKERS)).isTrue());
        ChangeOrder taken = ChangeOrder.of(onPi4("arm_freq=5000")).accepting(NextStep.Allow.BLOCKERS);
        assertThat(TriedChange.of(bench.workplace(), CART, taken).change().brings())
                .extracting(Finding::severity)
                .contains(Severity.BLOCKER);
    }

    @Test
    void whatACheckFindsInTheNewValueIsToldAndNotWhatWasThereBefore() throws Exception {
        assertThat(TriedChange.of(bench.workplace(), CART, onPi4("over_voltage=3"))
                        .change()
                        .brings())
                .extracting(Finding::id)
                .contains("practice-lowest-voltage")
                .doesNotContain("tuning-line-active");
        assertThat(TriedChange.of(bench.workplace(), CART, ChangeRequest.Edit.of("hdmi_group=2"))
                        .change()
                        .brings())
                .isEmpty();
    }

    @Test
    void whatGivesNoOneLineIsRefusedBeforeTheCardIsTouched() throws Exception {
        SparseDisk before = cart.copy();
        refused(CART, ChangeRequest.Edit.of("arm_freq=1500"), "from the same line");
        refused(CART, ChangeRequest.Edit.of(), "nothing to set");
        refused(CART, ChangeRequest.Edit.of("a=1", "a=2"), "given twice");
        refused(
                CART,
                new ChangeRequest.Edit(List.of("a=1"), Optional.of("pi99"), Optional.empty(), List.of(), List.of()),
                "no section");
        assertThat(cart.differingSectors(before)).isEmpty();
    }

    @Test
    void oneCardsTuningIsGivenToAnother() throws Exception {
        ChangeRequest.ToSettings like = new LikeJob(bench.workplace()).read(CART, Optional.of("pi4"), Set.of());
        assertThat(like.settings()).hasSize(2).containsEntry("arm_freq", "1750").containsEntry("over_voltage", "2");
        TriedChange.of(bench.workplace(), MAST, like).apply();
        assertThat(TriedChange.of(bench.workplace(), MAST, like).isNothing()).isTrue();
        assertThat(new LikeJob(bench.workplace())
                        .read(MAST, Optional.of("pi4"), Set.of())
                        .settings())
                .isEqualTo(like.settings());
    }

    @Test
    void aBlockerInAnotherCardsTuningAndAnotherBoardAreRefused() throws Exception {
        bench.insert("/cards/wild.img", MemoryWorkplace.card("arm_freq=1000\nover_voltage=6\nforce_turbo=1\n"));
        ChangeRequest.ToSettings wild = new LikeJob(bench.workplace())
                .read(CardRequest.of(Path.of("/cards/wild.img")), Optional.of("pi3"), Set.of());
        refused(MAST, wild, "blocker");
        assertThatThrownBy(() -> new LikeJob(bench.workplace()).read(CART, Optional.empty(), Set.of()))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("which board");
    }

    private String config() throws IOException {
        FatVolume volume = FatVolume.open(cart);
        return new String(
                volume.read(volume.find("config.txt").orElseThrow(), 1 << 20).bytes(), StandardCharsets.US_ASCII);
    }

    private void refused(CardRequest card, ChangeRequest request, String words) {
        assertThatThrownBy(() -> TriedChange.of(bench.workplace(), card, request))
                .isInstanceOf(CardException.class)
                .hasMessageContaining(words);
    }

    private static ChangeRequest.Edit onPi4(String... settings) {
        return new ChangeRequest.Edit(List.of(settings), Optional.empty(), Optional.of("pi4"), List.of(), List.of());
    }
}
