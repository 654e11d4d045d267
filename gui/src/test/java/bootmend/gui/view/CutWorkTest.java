package bootmend.gui.view;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.batch.BatchJournal;
import bootmend.batch.CardBatch;
import bootmend.batch.CutBatches;
import bootmend.gui.SmallCards;
import bootmend.gui.model.BatchState;
import bootmend.gui.model.ChangeState;
import bootmend.page.CardState;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextInputControl;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/** What the window says of work that was cut before it was opened, and how it closes on work under way. */
@Timeout(120)
class CutWorkTest {

    @TempDir
    private Path folder;

    private final FxRobot robot = new FxRobot();
    private Path home;
    private WindowOverFolder window;

    @BeforeEach
    void home() {
        home = folder.resolve("home");
    }

    @AfterEach
    void close() throws Exception {
        window.close();
    }

    @Test
    void whereTwoChangesCouldBeMeantTheUserNamesOneAndNothingIsWrittenBefore() throws Exception {
        Path card = SmallCards.write(folder, "a.img", SmallCards.TUNED);
        byte[] before = Files.readAllBytes(card);
        Path sister = Files.copy(card, folder.resolve("b.img"));
        CutChange.leave(card, home);
        CutChange.leave(sister, home);
        // Copied to another disk and gone from the first: which file was which, nothing tells any more.
        Path moved = Files.copy(card, folder.resolve("moved.img"));
        byte[] cut = Files.readAllBytes(moved);
        Files.delete(card);
        Files.delete(sister);

        look(moved);

        List<Button> offered = buttons("#strip-body");
        assertThat(offered).hasSize(2).allMatch(button -> button.getId().startsWith("strip-mine-"));
        assertThat(texts("#strip-body")).contains("nothing tells to which", "a.img", "b.img");
        assertThat(texts("#card-marks")).contains("A change was interrupted");
        Picture.write(window.picture(), Path.of("target/screenshots/unclear.png"));
        fire(offered.get(0));
        assertThat(state()).isInstanceOf(ChangeState.Interrupted.class);
        assertThat(Files.readAllBytes(moved)).isEqualTo(cut);

        fire(robot.lookup("#strip-reverse").queryAs(ButtonBase.class));
        assertThat(state()).isInstanceOf(ChangeState.Done.class);
        assertThat(Files.readAllBytes(moved)).isEqualTo(before);
    }

    @Test
    void anotherCardsChangeIsNamedWithItsPlaceAndLeftToThatCard() throws Exception {
        Path card = SmallCards.write(folder, "a.img", SmallCards.TUNED);
        Path sister = Files.copy(card, folder.resolve("b.img"));
        CutChange.leave(card, home);

        look(sister);

        assertThat(texts("#strip-body")).contains("Another card's change waits", "a.img");
        assertThat(state()).as("it may be changed all the same").isInstanceOf(ChangeState.Proposed.class);
        WindowOverFolder.onScreen(() -> {
            window.desk().showPage("changes");
            return null;
        });
        assertThat(texts("#changes-page")).contains("Another card's change waits", "a.img");
    }

    @Test
    void aBatchThatWasCutIsToldUntilItIsReadAndOnceAlone() throws Exception {
        List<Path> cards = List.of(folder.resolve("c1.img"), folder.resolve("c2.img"), folder.resolve("c3.img"));
        CardBatch batch = new CardBatch(1);
        BatchJournal.begin(home, "back to stock", cards, Instant.parse("2026-12-01T03:04:05Z"))
                .run(
                        batch,
                        card -> {
                            batch.stop();
                            throw CardException.interrupted("pulled", "Put it in again.", null);
                        },
                        result -> {});

        look(SmallCards.write(folder, "a.img", SmallCards.TUNED));

        assertThat(texts("#cut-batch")).contains("back to stock", "3 cards", "c1.img", "Not begun (2): c2.img, c3.img");
        Picture.write(window.picture(), Path.of("target/screenshots/cut-batch.png"));
        fire(robot.lookup("#cutbatch-read").queryAs(ButtonBase.class));
        assertThat(robot.lookup("#cut-batch").tryQuery()).isEmpty();
        assertThat(new CutBatches(home).untold()).isEmpty();
    }

    @Test
    void theWindowStaysWhereTheUserWantsItToAndTheBatchGoesOn() throws Exception {
        List<Path> cards = new ArrayList<>();
        Path master = SmallCards.write(folder, "master.img", SmallCards.TUNED);
        for (int i = 0; i < 60; i++) {
            cards.add(Files.copy(master, folder.resolve("c" + i + ".img")));
        }
        look(master);
        WindowOverFolder.onScreen(() -> {
            window.model().together(cards);
            return null;
        });
        window.settle();
        fire(robot.lookup("#batch-workout").queryAs(ButtonBase.class));
        WindowOverFolder.onScreen(() -> {
            robot.lookup("#batch-make").queryAs(ButtonBase.class).fire();
            window.desk().close();
            return null;
        });
        assertThat(texts("#closing")).contains("Changes are being written to several cards");
        Picture.write(window.picture(), Path.of("target/screenshots/closing.png"));
        WindowOverFolder.onScreen(() -> {
            robot.lookup("#closing-stay").queryAs(ButtonBase.class).fire();
            return null;
        });
        window.settle();

        assertThat(WindowOverFolder.onScreen(() -> window.stage().isShowing())).isTrue();
        assertThat(robot.lookup("#closing").tryQuery()).isEmpty();
        BatchState.Rest rest = (BatchState.Rest)
                window.model().batch().get().orElseThrow().state().get();
        assertThat(rest.tally().count(CardState.CHANGED)).isEqualTo(60);
        assertThat(new CutBatches(home).untold()).isEmpty();
    }

    private void look(Path card) throws Exception {
        window = new WindowOverFolder(home);
        WindowOverFolder.onScreen(() -> {
            window.model().look(card);
            return null;
        });
        window.settle();
    }

    /** The buttons below a node, once the toolkit has laid them out. */
    private List<Button> buttons(String id) throws Exception {
        return WindowOverFolder.onScreen(() -> {
            window.stage().getScene().getRoot().applyCss();
            window.stage().getScene().getRoot().layout();
            return List.copyOf(
                    robot.from(robot.lookup(id).<Node>query()).lookup(".button").<Button>queryAll());
        });
    }

    private void fire(ButtonBase button) throws Exception {
        WindowOverFolder.onScreen(() -> {
            button.fire();
            return null;
        });
        window.settle();
    }

    private ChangeState state() {
        return window.model().current().get().orElseThrow().change().state().get();
    }

    /** Every text below a node, as a user reads it. */
    private String texts(String id) throws Exception {
        return WindowOverFolder.onScreen(() -> {
            StringBuilder texts = new StringBuilder();
            for (Node node :
                    robot.from(robot.lookup(id).<Node>query()).lookup(".label").queryAll()) {
                texts.append(((Labeled) node).getText()).append('\n');
            }
            for (Node node :
                    robot.from(robot.lookup(id).<Node>query()).lookup(".prose").queryAll()) {
                texts.append(((TextInputControl) node).getText()).append('\n');
            }
            return texts.toString();
        });
    }
}
