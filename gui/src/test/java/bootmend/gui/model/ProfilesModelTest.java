package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.gui.SmallCards;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.record.ProfileJob;
import bootmend.record.ProfileView;
import bootmend.record.SettingDifference;
import bootmend.request.CardRequest;
import bootmend.trial.Trial;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Profiles looked at, put on cards, saved, compared and passed on, without a window. */
class ProfilesModelTest {

    @TempDir
    private Path folder;

    private TuningDesk bench;
    private ProfilesModel model;

    @BeforeEach
    void begin() throws CardException, IOException {
        bench = TuningDesk.filled(folder);
        model = new ProfilesModel(bench.desk);
        model.read();
    }

    @Test
    void withoutAProfileThereIsNothingToPut() {
        ProfilesModel none = new ProfilesModel(new TuningDesk(folder.resolve("other")).desk);
        none.read();

        assertThat(none.profiles().get().value().orElseThrow().profiles()).isEmpty();
        assertThat(none.putting().get().whyNot()).isEqualTo("Choose a profile first.");
    }

    @Test
    void theFirstIsLookedAtAndACardIsAskedFor() {
        assertThat(model.profile().map(ProfileView::name)).contains("cart-3");
        assertThat(model.putting().get().whyNot()).startsWith("Open a card first");
        model.put(true, true);
        model.compare();
        assertThat(model.comparison().get()).isInstanceOf(Reading.Unasked.class);
    }

    @Test
    void aKnownGoodProfileIsPutOnTheCardWithoutAQuestion() throws IOException {
        CardModel card = bench.look("lab-01.img", SmallCards.TUNED);
        assertThat(model.putting().get().whyNot()).isEmpty();

        model.put(false, false);
        assertThat(proposed(card).change().questions()).isEmpty();
        card.change().make();

        assertThat(card.change().state().get()).isInstanceOf(ChangeState.Done.class);
        assertThat(bench.config())
                .contains("arm_freq=1750\n")
                .contains("temp_limit=80")
                .doesNotContain("arm_freq=2000");
    }

    @Test
    void anUnprovenProfileWaitsForAnAnswer() throws IOException {
        CardModel card = bench.look("lab-01.img", SmallCards.TUNED);
        model.choose("weather-mast");

        model.put(false, false);

        assertThat(proposed(card).change().questions())
                .singleElement()
                .asString()
                .contains("unproven");
        assertThat(card.change().canMake()).isFalse();
        card.change().agree(proposed(card).change().questions().get(0), true);
        assertThat(card.change().canMake()).isTrue();
    }

    @Test
    void anotherBoardIsARiskOfItsOwn() throws IOException {
        CardModel card = bench.look("lab-01.img", SmallCards.TUNED);
        bench.board("pi4");
        assertThat(model.putting().get().forAnotherBoard()).isFalse();
        model.choose("weather-mast");
        assertThat(model.putting().get().forAnotherBoard()).isTrue();

        model.put(false, false);
        assertThat(card.change().state().get())
                .isInstanceOfSatisfying(
                        ChangeState.Failed.class,
                        failed -> assertThat(failed.error()).hasMessageContaining("is for pi1, not for pi4"));
        assertThat(model.putting().get().metBlockers()).isFalse();

        model.put(true, false);
        assertThat(proposed(card).change().order())
                .isInstanceOfSatisfying(
                        ChangeOrder.class,
                        order -> assertThat(order)
                                .isEqualTo(
                                        ChangeOrder.of(new ChangeRequest.ToProfile("weather-mast", Optional.of("pi4")))
                                                .accepting(NextStep.Allow.OTHER_BOARD)));
    }

    /** force_turbo with a raised voltage: "Revision codes", revision-codes.adoc, commit 0456a78c, warranty footnote. */
    @Test
    void blockersAreToldBeforeTheRiskIsOffered() throws CardException, IOException {
        Path wild = SmallCards.write(folder, "wild.img", "arm_freq=1000\nover_voltage=6\nforce_turbo=1\n");
        new ProfileJob(bench.workplace)
                .save(CardRequest.of(wild), new ProfileJob.Save("wild", "pi3", "", "", "", List.of(), false));
        CardModel card = bench.look("lab-01.img", SmallCards.TUNED);
        model.read();
        model.choose("wild");
        assertThat(model.putting().get().metBlockers()).isFalse();

        model.put(false, false);
        assertThat(card.change().state().get()).isInstanceOf(ChangeState.Failed.class);
        assertThat(model.putting().get().metBlockers()).isTrue();

        model.put(false, true);
        assertThat(proposed(card).change().order())
                .isInstanceOfSatisfying(
                        ChangeOrder.class,
                        order -> assertThat(order.accepts(NextStep.Allow.BLOCKERS))
                                .isTrue());
        model.choose("cart-3");
        assertThat(model.putting().get().metBlockers()).isFalse();
    }

    @Test
    void theCardIsComparedAndWhatWasSaidEndsWithTheNextChange() throws IOException {
        CardModel card = bench.look("lab-01.img", SmallCards.TUNED);

        model.compare();

        assertThat(model.comparison().get().value().orElseThrow())
                .contains(
                        new SettingDifference("arm_freq", Optional.of("1750"), Optional.of("2000")),
                        new SettingDifference("temp_limit", Optional.of("80"), Optional.empty()));
        model.put(false, false);
        card.change().make();
        assertThat(model.comparison().get()).isInstanceOf(Reading.Unasked.class);
        model.compare();
        assertThat(model.comparison().get().value().orElseThrow()).isEmpty();
    }

    @Test
    void aCardsSettingsAreSavedWithTheTrialsThatBackThem() throws IOException {
        bench.desk.look(folder.resolve("cart.img"));
        bench.board("pi4");
        ProfileSaving saving = model.saving();
        assertThat(saving.likelyBoard()).contains("pi4");

        saving.lookForTrials("pi4");
        List<Trial> backing = saving.backing().get().value().orElseThrow();
        assertThat(backing).extracting(trial -> trial.unit().label()).containsExactly("cart-3");
        saving.save(new ProfileJob.Save(
                "cart-4", "pi4", "fan", "", "", List.of(backing.get(0).id()), false));

        assertThat(model.profile().orElseThrow()).satisfies(profile -> {
            assertThat(profile.name()).isEqualTo("cart-4");
            assertThat(profile.knownGood()).isTrue();
        });
        saving.save(new ProfileJob.Save("cart-4", "pi4", "", "", "", List.of(), false));
        assertThat(saving.isNameTaken()).isTrue();
        saving.save(new ProfileJob.Save("cart-4", "pi4", "", "", "", List.of(), true));
        assertThat(model.profile().orElseThrow().knownGood()).isFalse();
        saving.save(new ProfileJob.Save("../cart", "pi4", "", "", "", List.of(), true));
        assertThat(saving.problem().get().orElseThrow()).hasMessageContaining("cannot be named");
        assertThat(saving.isNameTaken()).isFalse();
    }

    @Test
    void aProfileIsExportedDeletedAndTakenInAgain() throws IOException {
        Path file = folder.resolve("passed-on.yaml");
        model.exportTo(file);
        assertThat(Files.readString(file)).contains("name: cart-3");

        model.delete();
        assertThat(model.done().get().words().orElseThrow()).contains("Cards keep what they have");
        assertThat(model.profile().map(ProfileView::name)).contains("weather-mast");

        model.importFrom(file, false);
        assertThat(model.profile().map(ProfileView::name)).contains("cart-3");
        model.importFrom(file, false);
        assertThat(model.done().get().replaceable()).contains(file);
        model.importFrom(file, true);
        assertThat(model.done().get().error()).isEmpty();
        model.importFrom(folder.resolve("nowhere.yaml"), false);
        assertThat(model.done().get().error()).isPresent();
        assertThat(model.done().get().replaceable()).isEmpty();
    }

    @Test
    void howItStandsIsSaidInWords() {
        ProfileWords words = new ProfileWords(model.services().words());
        ProfileView good = model.profile().orElseThrow();
        assertThat(words.standing(good)).startsWith("Known-good");
        assertThat(words.evidence(good.evidence().get(0)))
                .endsWith(": held 70 minutes, under full load, without a throttle bit. This proves the settings.");
        model.choose("weather-mast");
        ProfileView short40 = model.profile().orElseThrow();
        assertThat(words.standing(short40)).startsWith("Unproven: no trial of 45 minutes");
        assertThat(words.evidence(short40.evidence().get(0))).endsWith("This alone proves nothing.");
        assertThat(ProfileWords.settings(short40, " ")).isEqualTo("arm_freq=900 sdram_freq=450 over_voltage=2");
    }

    @Test
    void aCardThatIsOutTakesNoProfile() throws IOException {
        CardModel card = bench.look("lab-01.img", SmallCards.TUNED);
        card.setGone(true);
        assertThat(model.putting().get().whyNot()).isEqualTo("This card cannot be read.");
        card.setGone(false);
        assertThat(model.putting().get().whyNot()).isEmpty();
    }

    private static ChangeState.Proposed proposed(CardModel card) {
        assertThat(card.change().state().get()).isInstanceOf(ChangeState.Proposed.class);
        return (ChangeState.Proposed) card.change().state().get();
    }
}
