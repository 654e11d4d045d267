package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.finding.Purpose;
import bootmend.gui.SmallCards;
import bootmend.gui.text.Words;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.operation.LineChange;
import bootmend.operation.Made;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A card from its first look to a change made and undone, without a window. */
class CardModelTest {

    @TempDir
    private Path folder;

    @Test
    void aTunedCardIsReadAndTheWayBackToStockIsWorkedOutAtOnce() throws IOException {
        CardModel model = look(SmallCards.TUNED);

        assertThat(model.sheet().get().value()).isPresent();
        assertThat(model.check().get().value()).isPresent();
        assertThat(model.health().get().value().orElseThrow().findings()).isEmpty();
        assertThat(model.history().get().value().orElseThrow().changes()).isEmpty();
        assertThat(model.change().state().get())
                .isInstanceOfSatisfying(
                        ChangeState.Proposed.class,
                        proposed -> assertThat(proposed.change().lines())
                                .extracting(LineChange::line)
                                .containsExactly(2, 3));
        assertThat(model.change().canMake()).isTrue();
    }

    @Test
    void aCardAtStockLeavesTheStripEmpty() throws IOException {
        assertThat(look("dtparam=audio=on\n").change().state().get()).isInstanceOf(ChangeState.Idle.class);
    }

    @Test
    void lookingWritesNothing() throws IOException {
        Path card = SmallCards.write(folder, "lab-02.img", SmallCards.TUNED);
        byte[] before = Files.readAllBytes(card);

        look(card);

        assertThat(Files.readAllBytes(card)).isEqualTo(before);
    }

    @Test
    void aChangeIsMadeShownInTheHistoryAndTakenBackToTheByte() throws IOException {
        Path card = SmallCards.write(folder, "lab-01.img", SmallCards.TUNED);
        byte[] before = Files.readAllBytes(card);
        CardModel model = look(card);

        model.change().make();

        assertThat(model.change().state().get()).isInstanceOfSatisfying(ChangeState.Done.class, done -> {
            assertThat(done.made()).isInstanceOf(Made.OnCard.class);
            assertThat(((Made.OnCard) done.made()).secondReader()).isTrue();
        });
        assertThat(model.sheet().get().value().orElseThrow().show().card().isStock())
                .isTrue();
        assertThat(model.history().get().value().orElseThrow().changes()).hasSize(1);
        assertThat(Files.readAllBytes(card)).isNotEqualTo(before);

        model.change().choose(ChangeOrder.of(ChangeRequest.Undo.LAST));
        model.change().make();

        assertThat(model.change().state().get()).isInstanceOf(ChangeState.Done.class);
        assertThat(Files.readAllBytes(card)).isEqualTo(before);
    }

    @Test
    void anotherCardInTheReaderIsNotWrittenTo() throws IOException {
        Path card = SmallCards.write(folder, "lab-01.img", SmallCards.TUNED);
        CardModel model = look(card);
        Path other = SmallCards.write(folder, "other.img", SmallCards.TUNED.replace("cart 3", "cart 4"));
        byte[] otherBytes = Files.readAllBytes(other);
        Files.write(card, otherBytes);

        model.change().make();

        assertThat(model.change().state().get())
                .isInstanceOfSatisfying(
                        ChangeState.Failed.class,
                        failed -> assertThat(failed.error())
                                .hasMessage("the card is not as it was when the change was worked out"));
        assertThat(Files.readAllBytes(card)).isEqualTo(otherBytes);
    }

    @Test
    void aCardThatWasTakenOutSaysSoAndComesBackFresh() throws IOException {
        CardModel model = look(SmallCards.TUNED);

        model.setGone(true);

        assertThat(model.gone().get()).isTrue();
        assertThat(model.change().state().get()).isInstanceOf(ChangeState.Idle.class);
        model.change().make();
        assertThat(model.history().get().value().orElseThrow().changes()).isEmpty();

        model.setGone(false);

        assertThat(model.sheet().get().value()).isPresent();
        assertThat(model.change().canMake()).isTrue();
    }

    @Test
    void aFileThatIsNoCardGivesAnErrorWithWhatToDo() throws IOException {
        Path noCard = Files.write(folder.resolve("notes.img"), new byte[100_000]);

        CardModel model = look(noCard);

        assertThat(model.sheet().get().error().orElseThrow().remedy()).isNotBlank();
        assertThat(model.check().get().error()).isPresent();
        assertThat(model.change().state().get()).isInstanceOf(ChangeState.Idle.class);
    }

    @Test
    void theBoardChoosesTheValuesAndThePurposeTheCheck() throws IOException {
        CardModel model = look(SmallCards.TUNED);

        model.setBoard(Optional.of("pi4"));
        model.setPurpose(Purpose.FIRMWARE_UPDATE);

        assertThat(model.sheet().get().value().orElseThrow().show().board()).contains("pi4");
        assertThat(model.check().get().value().orElseThrow().purpose()).isEqualTo(Purpose.FIRMWARE_UPDATE);
        assertThat(model.check().get().value().orElseThrow().boards()).containsExactly("pi4");
        assertThat(model.findingsAt("config.txt", 2)).isNotEmpty();
        assertThat(model.findingsAt("config.txt", 1)).isEmpty();
    }

    @Test
    void aPackedImageIsShownAndAChangeToItRefusedBeforeItIsShown() throws IOException {
        Path packed = folder.resolve("lab-01.img.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(packed))) {
            Files.copy(SmallCards.write(folder, "lab-01.img", SmallCards.TUNED), out);
        }

        CardModel model = look(packed);

        assertThat(model.sheet().get().value()).isPresent();
        assertThat(model.health().get().value()).isPresent();
        assertThat(model.change().state().get())
                .isInstanceOfSatisfying(
                        ChangeState.Failed.class,
                        failed -> assertThat(failed.error()).hasMessageContaining("packed image"));
    }

    @Test
    void resettingTwiceFindsNothingToDo() throws IOException {
        CardModel model = look(SmallCards.TUNED);
        model.change().make();

        model.change().choose(ChangeOrder.of(ChangeRequest.ToStock.PLAIN));

        assertThat(model.change().state().get()).isInstanceOf(ChangeState.Nothing.class);
        assertThat(model.change().canMake()).isFalse();
    }

    private CardModel look(String config) throws IOException {
        return look(SmallCards.write(folder, "lab-01.img", config));
    }

    private CardModel look(Path card) {
        Services services = new Services(
                Workplace.ofThisComputer(folder.resolve("home")),
                new WorkQueue(Runnable::run, Runnable::run),
                Runnable::run,
                new Words(Locale.ENGLISH));
        CardModel model = new CardModel(services, CardRequest.of(card), Optional.empty());
        model.read();
        return model;
    }
}
