package bootmend.gui.view;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.gui.SmallCards;
import bootmend.gui.model.CardModel;
import bootmend.gui.model.ChangeState;
import java.nio.file.Path;
import javafx.scene.control.TextArea;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/** The changes made to a card as a user meets them, and the way back. */
class ChangesPageTest {

    private final FxRobot robot = new FxRobot();

    @TempDir
    private Path folder;

    private WindowOverFolder window;

    @BeforeEach
    void open() throws Exception {
        window = new WindowOverFolder(folder.resolve("home"));
        Path image = SmallCards.write(folder, "lab-07.img", "arm_freq=2000\n");
        robot.interact(() -> {
            window.model().look(image);
            window.desk().showPage("changes");
        });
        window.settle();
    }

    @AfterEach
    void close() throws Exception {
        window.close();
    }

    @Test
    void aChangeIsListedAndGoneBackTo() throws Exception {
        assertThat(robot.lookup(".change-box").queryAll()).isEmpty();
        robot.clickOn("#strip-make");
        window.settle();
        assertThat(robot.lookup(".change-box").queryAll()).hasSize(1);
        assertThat(robot.lookup(".change-lines").queryAs(TextArea.class).getText())
                .contains("arm_freq=2000  \u2192  #arm_freq=2000");

        make("#changes-first");
        assertThat(stock()).isFalse();
        make("#changes-to-1");
        assertThat(stock()).isTrue();
        assertThat(robot.lookup(".change-box").queryAll()).hasSize(3);
    }

    private void make(String button) throws Exception {
        robot.clickOn(button);
        window.settle();
        robot.clickOn("#strip-make");
        window.settle();
        assertThat(model().change().state().get()).isInstanceOf(ChangeState.Done.class);
    }

    private boolean stock() {
        return model().sheet().get().value().orElseThrow().show().card().isStock();
    }

    private CardModel model() {
        return window.model().current().get().orElseThrow();
    }
}
