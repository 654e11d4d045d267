package bootmend.gui.view;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.gui.BatchCards;
import bootmend.gui.model.DeskModel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.control.ListView;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/** The list by keyboard: an empty heading of readers, then cards opened here, then those looked at before. */
@Timeout(120)
class CardsPaneTest {

    @TempDir
    private Path folder;

    private final FxRobot robot = new FxRobot();
    private final List<String> seen = new ArrayList<>();
    private List<Path> cards;
    private Path earlier;
    private WindowOverFolder window;

    @BeforeEach
    void open() throws Exception {
        BatchCards made = new BatchCards(Files.createDirectory(folder.resolve("cards")));
        cards = made.tuned(3);
        earlier = made.stock("earlier.img");
        try (WindowOverFolder before = new WindowOverFolder(folder.resolve("records"))) {
            WindowOverFolder.onScreen(() -> {
                before.model().look(earlier);
                return null;
            });
            before.settle();
        }
        window = new WindowOverFolder(folder.resolve("records"));
        WindowOverFolder.onScreen(() -> {
            DeskModel model = window.model();
            model.offer(cards);
            model.current()
                    .watch(card -> card.ifPresent(
                            each -> seen.add(each.card().card().getFileName().toString())));
            model.batch()
                    .watch(batch ->
                            batch.ifPresent(each -> seen.add(each.cards().size() + " together")));
            list().requestFocus();
            return null;
        });
        window.settle();
    }

    @AfterEach
    void close() throws Exception {
        window.close();
    }

    @Test
    void downPassesFromCardToCardAndOverHeadings() throws Exception {
        type(KeyCode.HOME);
        assertThat(current()).isEqualTo(cards.get(0));
        type(KeyCode.DOWN);
        type(KeyCode.DOWN);
        assertThat(current()).isEqualTo(cards.get(2));
        type(KeyCode.DOWN);
        assertThat(current()).isEqualTo(earlier);
        type(KeyCode.UP);
        assertThat(current()).isEqualTo(cards.get(2));
        type(KeyCode.UP);
        type(KeyCode.UP);
        type(KeyCode.UP);
        assertThat(current()).isEqualTo(cards.get(0));
        assertThat(list().getSelectionModel().getSelectedIndices()).hasSize(1);
    }

    @Test
    void aSelectionThatGrowsNeverLooksAtACardAloneInBetween() throws Exception {
        type(KeyCode.HOME);
        seen.clear();
        robot.press(KeyCode.SHIFT);
        type(KeyCode.DOWN);
        type(KeyCode.DOWN);
        type(KeyCode.DOWN);
        robot.release(KeyCode.SHIFT);
        window.settle();

        assertThat(seen).containsExactly("2 together", "3 together", "4 together");
        assertThat(window.model().batch().get().orElseThrow().cards())
                .containsExactly(cards.get(0), cards.get(1), cards.get(2), earlier);
    }

    @Test
    void theListKeepsItsOrderAndItsSelectionWhenItIsFilledAgain() throws Exception {
        type(KeyCode.END);
        assertThat(current()).isEqualTo(earlier);
        List<?> before = List.copyOf(list().getItems());
        window.attach(List.of());

        assertThat(List.copyOf(list().getItems())).isEqualTo(before);
        assertThat(list().getSelectionModel().getSelectedIndices()).hasSize(1);
        assertThat(current()).isEqualTo(earlier);
    }

    @Test
    void whatIsDroppedTogetherIsSelectedTogether() throws Exception {
        WindowOverFolder.onScreen(() -> {
            window.model().open(cards.subList(0, 2));
            return null;
        });
        window.settle();

        assertThat(list().getSelectionModel().getSelectedIndices()).hasSize(2);
        seen.clear();
        window.settle();
        assertThat(seen).isEmpty();
    }

    @Test
    void aFailureToListReadersDoesNotHideTheCardsTogether() throws Exception {
        WindowOverFolder.onScreen(() -> {
            window.model().together(cards);
            return null;
        });
        window.settle();
        window.failReaders();

        assertThat(robot.lookup("#batch-page").tryQuery()).isPresent();
        assertThat(robot.lookup(".notice-problem").queryAll()).isNotEmpty();
    }

    private void type(KeyCode code) throws Exception {
        robot.type(code);
        window.settle();
        window.settle();
    }

    private Path current() throws Exception {
        return WindowOverFolder.onScreen(
                () -> window.model().current().get().orElseThrow().card().card());
    }

    private ListView<?> list() {
        return robot.lookup("#cards").queryAs(ListView.class);
    }
}
