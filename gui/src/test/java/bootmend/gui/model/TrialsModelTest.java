package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.gui.SmallCards;
import bootmend.record.TrialListing;
import bootmend.record.TrialSide;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Trials listed, drawn, advised on, added and staged, without a window. */
class TrialsModelTest {

    @TempDir
    private Path folder;

    private TuningDesk bench;
    private TrialsModel model;

    @BeforeEach
    void begin() throws CardException, IOException {
        bench = TuningDesk.filled(folder);
        model = new TrialsModel(bench.desk);
        model.read();
    }

    @Test
    void withoutATrialThereIsNothingToDrawOrStage() {
        TrialsModel none = new TrialsModel(new TuningDesk(folder.resolve("other")).desk);
        none.read();

        assertThat(none.labels()).isEmpty();
        assertThat(none.board().get()).isInstanceOf(Reading.Unasked.class);
        none.stage(false);
        assertThat(none.suggested()).isEmpty();
    }

    @Test
    void theBoardWithTheMostTrialsIsLookedAtFirst() {
        assertThat(model.labels()).containsExactly("cart-3", "lab-07", "mast");
        assertThat(model.label().get()).contains("lab-07");
        assertThat(model.suggested()).isPresent();
        assertThat(model.trials())
                .hasSize(10)
                .isSortedAccordingTo(
                        (a, b) -> b.trial().when().compareTo(a.trial().when()));

        model.choose("mast");

        assertThat(model.board().get().value().orElseThrow().report().unit().board())
                .isEqualTo("pi1");
        assertThat(model.trials()).hasSize(1);
    }

    @Test
    void theSuggestedSettingIsStagedTriedAndKept() throws IOException {
        assertThat(model.staging().get().whyNot()).startsWith("Open a card first");
        CardModel card = bench.look("lab-07.img", "dtparam=audio=on\n");
        assertThat(model.staging().get()).isEqualTo(new TrialsModel.Staging("", false, false));

        model.stage(false);
        assertThat(card.change().state().get())
                .isInstanceOfSatisfying(
                        ChangeState.Proposed.class,
                        proposed -> assertThat(
                                        RequestKey.of(proposed.change().order().request()))
                                .isEqualTo("stage"));
        card.change().make();
        assertThat(model.staging().get().staged()).isTrue();
        assertThat(model.restartCommand()).contains("tryboot");

        model.keepStaged();
        card.change().make();
        assertThat(model.staging().get().staged()).isFalse();
        assertThat(bench.config()).contains("arm_freq=2075\nover_voltage=5");
    }

    @Test
    void stagedSettingsAreTakenAwayWithoutATrace() throws IOException {
        CardModel card = bench.look("lab-07.img", "dtparam=audio=on\n");
        model.stage(false);
        card.change().make();

        model.takeStagedAway();
        card.change().make();

        assertThat(card.change().state().get()).isInstanceOf(ChangeState.Done.class);
        assertThat(model.staging().get().staged()).isFalse();
    }

    @Test
    void anOlderBoardCanBeStagedToo() throws IOException {
        CardModel card = bench.look("mast-2.img", SmallCards.TUNED);
        model.choose("mast");
        assertThat(model.suggested()).isPresent();

        model.stage(false);

        // "EEPROM boot flow", bootflow-eeprom.adoc, commit 33cd51c5: all boards support the one-time flag.
        assertThat(card.change().state().get()).isInstanceOf(ChangeState.Proposed.class);
        assertThat(model.staging().get().metBlockers()).isFalse();
    }

    @Test
    void aTrialIsAddedAndItsBoardLookedAt() {
        model.add(draft("lab-09", "pi4", "1600", "1", "holds", "50,5"));

        assertThat(model.adding().get().error()).isEmpty();
        assertThat(model.label().get()).contains("lab-09");
        TrialListing.Listed kept = model.trials().get(0);
        assertThat(kept.trial().settings()).isEqualTo(Map.of("arm_freq", 1600L, "over_voltage", 1L));
        assertThat(kept.trial().run().minutes()).hasValue(50.5);
        assertThat(kept.trial().isKnownGood()).isTrue();
        assertThat(model.boardOf(" lab-09 ")).contains("pi4");
    }

    @Test
    void whatIsWrongInTheFormIsASentence() {
        assertRefused(draft(" ", "pi4", "1600", "", "holds", ""), "the board has no label");
        assertRefused(draft("lab-09", "pi4", "1600", "", "", ""), "how the trial ended was not said");
        assertRefused(
                draft("lab-09", "pi4", "1600", "", "holds", "an hour"), "\u201can hour\u201d is no number (minutes)");
        assertRefused(draft("lab-09", "pi4", "fast", "", "holds", ""), "arm_freq=fast is no setting");
        assertRefused(draft("lab-09", "", "1600", "", "holds", ""), "which kind of board lab-09 is was not said");
        assertRefused(draft("lab-07", "pi3", "1200", "", "holds", ""), "lab-07 is a pi4 in earlier trials");
        assertRefused(draft("lab-09", "pi4", "1600", "", "holds", "NaN"), "the minutes should be 0 to 1000000");
        assertThat(model.labels()).doesNotContain("lab-09");
        model.beginAdding();
        assertThat(model.adding().get()).isInstanceOf(Reading.Unasked.class);
    }

    @Test
    void settingsAreTakenFromTheCard() throws IOException {
        bench.look("lab-09.img", "[pi4]\narm_freq=1800\nover_voltage=2\n");

        model.add(new TrialDraft(
                "lab-09",
                "pi4",
                true,
                false,
                "",
                "3",
                "gpu_freq = 600, arm_boost=1",
                "holds",
                "60",
                true,
                "",
                "",
                "0x0",
                "",
                "",
                "",
                "",
                "",
                false));

        assertThat(model.trials().get(0).trial().settings())
                .containsEntry("arm_freq", 1800L)
                .containsEntry("over_voltage", 3L)
                .containsEntry("gpu_freq", 600L)
                .containsEntry("arm_boost", 1L);
    }

    @Test
    void aTornFileIsToldAndNothingIsAdvisedWithoutIt() throws IOException {
        Files.writeString(folder.resolve("home/trials/torn.yaml"), "schema: 1\n");

        model.read();

        assertThat(model.listing().get().value().orElseThrow().problems())
                .singleElement()
                .asString()
                .contains("torn.yaml");
        assertThat(model.board().get().error()).isPresent();
        assertThat(model.trials()).hasSize(10);
    }

    @Test
    void anotherBoardOrAnotherCoolingIsDrawnBeside() {
        assertThat(model.sides())
                .extracting(TrialSide::words)
                .containsExactly("lab-07, heat sink", "lab-07, heat sink with fan", "cart-3", "mast");

        model.compare(Optional.of(TrialSide.of("cart-3")));
        assertThat(model.board()
                        .get()
                        .value()
                        .orElseThrow()
                        .chart()
                        .orElseThrow()
                        .other())
                .isPresent();
        model.choose("cart-3");
        assertThat(model.beside().get()).isEmpty();
    }

    @Test
    void whatIsDeletedCanBePutBack() {
        TrialListing.Listed first = model.trials().get(0);
        model.delete(first);
        assertThat(model.trials()).hasSize(9).doesNotContain(first);
        assertThat(model.canPutBack()).isTrue();

        model.putBack();
        assertThat(model.trials()).hasSize(10).contains(first);
        assertThat(model.canPutBack()).isFalse();
    }

    @Test
    void aTrialIsSaidInWords() {
        TrialWords words = new TrialWords(model.services().words(), ZoneOffset.UTC);
        TrialListing.Listed throttled = model.trials().get(2);

        assertThat(words.whole(throttled))
                .startsWith(
                        "2026-11-04 08:15, lab-07 (pi4), arm_freq=2000 over_voltage=4: throttles (the throttle mask has ")
                .contains("Peak 83 degC.", "Throttle mask 0x60006 (", "Notes: the fan was off.");
        assertThat(words.counts(throttled.trial())).isEqualTo("throttled");
        assertThat(words.clock(throttled.trial()) + words.voltage(throttled.trial()) + words.others(throttled.trial()))
                .isEqualTo("20004");
    }

    private void assertRefused(TrialDraft draft, String why) {
        model.add(draft);
        assertThat(model.adding().get().error().orElseThrow()).hasMessageContaining(why);
    }

    private static TrialDraft draft(
            String label, String board, String clock, String step, String outcome, String minutes) {
        return new TrialDraft(
                label, board, false, false, clock, step, "", outcome, minutes, true, "66", "", "0x0", "fan", "", "22",
                "", "", false);
    }
}
