package bootmend.gui.view;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.gui.SmallCards;
import bootmend.gui.model.CardModel;
import bootmend.gui.model.ChangeState;
import bootmend.gui.model.Reading;
import bootmend.operation.ChangeRequest;
import bootmend.view.TextComparison;
import java.nio.file.Files;
import java.nio.file.Path;
import javafx.scene.control.ListView;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/** Earlier settings as a user meets them: found, compared, and one of them put back. */
class EarlierPageTest {

    private static final String THEN = "# cart 2\narm_freq=1300\nhdmi_group=1\n";

    private final FxRobot robot = new FxRobot();

    @TempDir
    private Path folder;

    private WindowOverFolder window;
    private Path card;

    @BeforeEach
    void open() throws Exception {
        window = new WindowOverFolder(folder.resolve("home"));
        card = SmallCards.writeWithEarlier(folder, "lab-07.img", SmallCards.TUNED, THEN);
    }

    @AfterEach
    void close() throws Exception {
        window.close();
    }

    private void look() throws Exception {
        robot.interact(() -> {
            window.model().look(card);
            window.desk().showPage("earlier");
        });
        window.settle();
    }

    private CardModel model() {
        return window.model().current().get().orElseThrow();
    }

    private ListView<?> list(String id) {
        return robot.lookup(id).queryListView();
    }

    @Test
    void whatIsFoundAtOnceIsListedBesideThePresentFile() throws Exception {
        look();

        assertThat(list("#earlier-versions").getItems()).hasSize(1);
        assertThat(model().earlier().version().orElseThrow().settings()).containsEntry("arm_freq", "1300");
        assertThat(list("#earlier-rows").getItems())
                .filteredOn(row -> !((TextComparison.Row) row).isSame())
                .isNotEmpty();
    }

    @Test
    void nothingIsLookedForBeforeThePageIsOpened() throws Exception {
        robot.interact(() -> window.model().look(card));
        window.settle();

        assertThat(model().earlier().found().get()).isInstanceOf(Reading.Unasked.class);
    }

    @Test
    void allOfTheFreeSpaceIsSearchedWhenAskedFor() throws Exception {
        look();
        assertThat(model().earlier().found().get().value().orElseThrow().complete())
                .isFalse();

        robot.clickOn("#earlier-all");
        window.settle();

        assertThat(model().earlier().found().get().value().orElseThrow().complete())
                .isTrue();
        assertThat(model().earlier().progress().get()).isEmpty();
    }

    @Test
    void aVersionIsPutBackThroughTheChangeStrip() throws Exception {
        byte[] before = Files.readAllBytes(card);
        look();
        robot.clickOn("#earlier-whole");
        window.settle();
        assertThat(model().change().state().get())
                .isInstanceOfSatisfying(
                        ChangeState.Proposed.class,
                        proposed -> assertThat(proposed.change().order().request())
                                .isInstanceOf(ChangeRequest.ToEarlier.class));
        assertThat(Files.readAllBytes(card)).isEqualTo(before);

        robot.clickOn("#strip-make");
        window.settle();

        assertThat(model().change().state().get()).isInstanceOf(ChangeState.Done.class);
        assertThat(model().sheet()
                        .get()
                        .value()
                        .orElseThrow()
                        .files()
                        .get(0)
                        .lines()
                        .get(1)
                        .text())
                .isEqualTo("arm_freq=1300");
        assertThat(model().earlier().version().orElseThrow().settings()).containsEntry("arm_freq", "2000");
    }
}
