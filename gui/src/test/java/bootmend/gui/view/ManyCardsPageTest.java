package bootmend.gui.view;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.gui.BatchCards;
import bootmend.gui.model.BatchModel;
import bootmend.gui.model.BatchState;
import bootmend.page.CardState;
import bootmend.record.ProfileJob;
import bootmend.request.CardRequest;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TableView;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

@Timeout(120)
class ManyCardsPageTest {

    private static final long PATIENCE_SECONDS = 60;

    @TempDir
    private Path folder;

    private final FxRobot robot = new FxRobot();
    private BatchCards cards;
    private WindowOverFolder window;

    @BeforeEach
    void open() throws Exception {
        cards = new BatchCards(Files.createDirectory(folder.resolve("cards")));
        window = new WindowOverFolder(folder.resolve("records"));
    }

    @AfterEach
    void close() throws Exception {
        window.close();
    }

    @Test
    void droppedImagesAreWorkedOutThenDoneAndTheDamagedOneFailsAlone() throws Exception {
        List<Path> all =
                List.of(cards.tuned("a.img"), cards.broken("b.img"), cards.stock("c.img"), cards.tuned("d.img"));
        drop(all);
        assertThat(table().getItems()).hasSize(4);
        assertThat(text("#batch-marks .mark")).contains("1 at stock", "2 tuned", "1 failed");

        press("#batch-workout");
        assertThat(text("#batch-make")).containsExactly("P_ut 2 cards back to stock");
        assertThat(prose())
                .anyMatch(words -> words.startsWith("2 cards change: 4 lines, "))
                .anyMatch(words -> words.equals("Nothing to do on 1 card."));

        press("#batch-make");
        assertThat(text("#batch-marks .mark")).contains("3 at stock", "2 changed", "1 failed");
        assertThat(prose()).anyMatch(words -> words.startsWith("2 cards were changed, synced and read back"));
        assertThat(BatchCards.holds(all.get(0), "#arm_freq=2000")).isTrue();
        assertThat(BatchCards.holds(all.get(3), "#arm_freq=2000")).isTrue();
        assertThat(Files.readAllBytes(all.get(1))).containsOnly(0);
    }

    @Test
    void aDroppedFolderComesToItsImages() throws Exception {
        cards.tuned(3);
        drop(List.of(folder.resolve("cards")));

        assertThat(text("#batch-title")).containsExactly("3 cards together");
    }

    @Test
    void theChosenCardSaysWhyItFailedAndCanBeLookedAtAlone() throws Exception {
        List<Path> all = List.of(cards.tuned("a.img"), cards.broken("b.img"));
        drop(all);
        press("#batch-workout");

        select(1);
        assertThat(robot.lookup("#batch-detail-body .notice-problem").queryAll())
                .hasSize(1);
        select(0);
        press("#batch-look");
        assertThat(window.model().current().get().orElseThrow().card().card()).isEqualTo(all.get(0));
        press("#strip-make");
        assertThat(BatchCards.holds(all.get(0), "#arm_freq=2000")).isTrue();

        press("#batch-back");
        assertThat(window.model().current().get()).isEmpty();
        assertThat(batch().rows().get(0).get().now().orElseThrow().stock()).isTrue();
        assertThat(batch().rows().get(0).get().is(CardState.SEEN)).isTrue();
        assertThat(table().getSelectionModel().getSelectedIndex()).isZero();
    }

    @Test
    void stoppingLeavesTheCardsThatWereNotBegunAsTheyWere() throws Exception {
        List<Path> all = cards.tuned(300);
        drop(all);
        press("#batch-workout");
        WindowOverFolder.onScreen(() -> {
            robot.lookup("#batch-make").queryAs(ButtonBase.class).fire();
            robot.lookup("#batch-stop").queryAs(ButtonBase.class).fire();
            return null;
        });
        window.settle();

        BatchState.Rest rest = (BatchState.Rest) batch().state().get();
        assertThat(rest.tally().count(CardState.NOT_STARTED)).isPositive();
        assertThat(rest.tally().count(CardState.NOT_STARTED) + rest.tally().count(CardState.CHANGED))
                .isEqualTo(300);
        for (int i = 0; i < all.size(); i++) {
            assertThat(BatchCards.holds(all.get(i), "#arm_freq=2000"))
                    .isEqualTo(batch().rows().get(i).get().is(CardState.CHANGED));
        }
    }

    @Test
    void whileCardsAreWrittenNoOtherCardTakesTheirPlace() throws Exception {
        List<Path> all = cards.tuned(40);
        Path other = cards.stock("other.img");
        drop(all);
        press("#batch-workout");
        BatchModel batch = batch();
        WindowOverFolder.onScreen(() -> {
            robot.lookup("#batch-make").queryAs(ButtonBase.class).fire();
            window.model().look(other);
            window.model().together(List.of(other, all.get(0)));
            return null;
        });
        window.settle();

        assertThat(batch()).isSameAs(batch);
        assertThat(((BatchState.Rest) batch.state().get()).tally().count(CardState.CHANGED))
                .isEqualTo(40);
    }

    @Test
    void closingTheWindowAsksAndFinishesTheCardsInWork() throws Exception {
        List<Path> all = cards.tuned(200);
        drop(all);
        press("#batch-workout");
        BatchModel batch = batch();
        boolean open = WindowOverFolder.onScreen(() -> {
            robot.lookup("#batch-make").queryAs(ButtonBase.class).fire();
            window.desk().close();
            window.desk().close();
            robot.lookup("#closing-these").queryAs(ButtonBase.class).fire();
            return window.stage().isShowing();
        });
        assertThat(open).isTrue();
        window.settle();
        assertThat(WindowOverFolder.onScreen(() -> window.stage().isShowing())).isFalse();
        BatchState.Rest rest = (BatchState.Rest) batch.state().get();
        assertThat(rest.tally().count(CardState.FAILED)).isZero();
        assertThat(rest.tally().count(CardState.NOT_STARTED)).isPositive();
    }

    @Test
    void aCheckSaysWhichCardsAreReadyAndSavesSlips() throws Exception {
        drop(List.of(cards.tuned("a.img"), cards.stock("b.img")));
        WindowOverFolder.onScreen(() -> {
            robot.lookup("#batch-choice-check").queryAs(RadioButton.class).fire();
            return null;
        });
        press("#batch-workout");
        assertThat(batch().rows())
                .allMatch(row -> row.get().is(CardState.READY) || row.get().is(CardState.NOT_READY));

        Path file = folder.resolve("slips.html");
        window.answers().save = Optional.of(file);
        press("#batch-slips");
        assertThat(Files.readString(file, StandardCharsets.UTF_8)).contains("a.img", "b.img");
        assertThat(prose()).anyMatch(words -> words.startsWith("Saved: "));
    }

    @Test
    void onlyThoseThatWantAttentionAreShownWhenAsked() throws Exception {
        drop(List.of(cards.tuned("a.img"), cards.broken("b.img"), cards.stock("c.img")));
        WindowOverFolder.onScreen(() -> {
            robot.lookup("#batch-only").queryAs(CheckBox.class).fire();
            return null;
        });

        assertThat(table().getItems()).hasSize(1);
    }

    @Test
    void theTableIsWorkedByKeyboardAlone() throws Exception {
        List<Path> all = List.of(cards.tuned("a.img"), cards.stock("b.img"));
        drop(all);
        WindowOverFolder.onScreen(() -> {
            table().requestFocus();
            table().getSelectionModel().clearAndSelect(0);
            return null;
        });
        robot.type(KeyCode.DOWN, KeyCode.ENTER);
        window.settle();

        assertThat(window.model().current().get().orElseThrow().card().card()).isEqualTo(all.get(1));
    }

    @Test
    void aTableOfThousandsHasCellsForWhatIsSeenAlone() throws Exception {
        List<Path> missing = new ArrayList<>();
        for (int i = 0; i < 5000; i++) {
            missing.add(folder.resolve("gone-" + i + ".img"));
        }
        drop(missing);

        assertThat(table().getItems()).hasSize(5000);
        assertThat(text("#batch-marks .mark")).containsExactly("5,000 failed");
        assertThat(robot.lookup("#batch-table .table-row-cell").queryAll().size())
                .isLessThan(60);
        ListView<?> list = robot.lookup("#cards").queryAs(ListView.class);
        assertThat(list.getSelectionModel().getSelectedIndices()).hasSize(5000);
    }

    @Test
    void anUnprovenProfileIsAgreedToBeforeItIsPutOnTheCards() throws Exception {
        Path card = cards.tuned("a.img");
        new ProfileJob(window.model().services().workplace())
                .save(CardRequest.of(card), new ProfileJob.Save("cart", "pi4", "", "", "", List.of(), false));
        drop(List.of(cards.stock("b.img"), cards.stock("c.img")));
        WindowOverFolder.onScreen(() -> {
            robot.lookup("#batch-choice-profile").queryAs(RadioButton.class).fire();
            return null;
        });
        assertThat(robot.lookup("#batch-cautions").tryQuery()).isPresent();
        press("#batch-workout");

        assertThat(robot.lookup("#batch-make").queryAs(ButtonBase.class).isDisabled())
                .isTrue();
        WindowOverFolder.onScreen(() -> {
            robot.lookup("#batch-agree").queryAs(CheckBox.class).fire();
            return null;
        });
        press("#batch-make");
        assertThat(batch().rows()).allMatch(row -> row.get().is(CardState.CHANGED));
    }

    private BatchModel batch() {
        return window.model().batch().get().orElseThrow();
    }

    private TableView<?> table() {
        return robot.lookup("#batch-table").queryAs(TableView.class);
    }

    private void drop(List<Path> files) throws Exception {
        WindowOverFolder.onScreen(() -> {
            ((DeskView) window.desk().scene().getRoot()).dropped(files);
            return null;
        });
        window.settle();
        await();
    }

    private void press(String id) throws Exception {
        WindowOverFolder.onScreen(() -> {
            robot.lookup(id).queryAs(ButtonBase.class).fire();
            return null;
        });
        window.settle();
    }

    private void select(int row) throws Exception {
        WindowOverFolder.onScreen(() -> {
            table().getSelectionModel().clearAndSelect(row);
            return null;
        });
    }

    private void await() throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
        while (!WindowOverFolder.onScreen(() -> window.model()
                .batch()
                .get()
                .filter(model -> model.state().get() instanceof BatchState.Rest)
                .isPresent())) {
            if (System.nanoTime() > end) {
                throw new TimeoutException("the cards were not read");
            }
            Thread.sleep(10);
        }
    }

    private List<String> text(String selector) {
        return robot.lookup(selector).queryAll().stream()
                .map(node -> node instanceof ButtonBase button ? button.getText() : ((Label) node).getText())
                .toList();
    }

    private List<String> prose() {
        return robot.lookup("#batch-body .prose").queryAllAs(Prose.class).stream()
                .map(Prose::getText)
                .toList();
    }
}
