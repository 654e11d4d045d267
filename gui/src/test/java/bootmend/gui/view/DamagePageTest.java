package bootmend.gui.view;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.gui.SmallCards;
import bootmend.gui.model.CardModel;
import bootmend.gui.model.ChangeState;
import java.nio.file.Path;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextInputControl;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/** Damage as a user meets it: what is wrong, the repair, and the card that is sound after. */
class DamagePageTest {

    private final FxRobot robot = new FxRobot();

    @TempDir
    private Path folder;

    private WindowOverFolder window;

    @BeforeEach
    void open() throws Exception {
        window = new WindowOverFolder(folder.resolve("home"));
    }

    @AfterEach
    void close() throws Exception {
        window.close();
    }

    @Test
    void aDamagedCardIsRepairedAndSoundAfter() throws Exception {
        look(SmallCards.writeDamaged(folder, "config-utf16"));
        assertThat(page()).contains("1 thing is wrong with this card", "UTF-16", "Can be repaired");

        robot.clickOn("#damage-repair");
        window.settle();
        robot.clickOn("#strip-make");
        window.settle();

        assertThat(model().change().state().get()).isInstanceOf(ChangeState.Done.class);
        assertThat(page())
                .contains("No damage was seen", "Read: the boot sector")
                .doesNotContain("Can be repaired");
    }

    @Test
    void freeingClustersIsAChoiceThatTheShownRepairFollows() throws Exception {
        look(SmallCards.writeDamaged(folder, "lost-clusters"));
        assertThat(page()).contains("Only if you choose so below");
        robot.clickOn("#damage-repair");
        window.settle();
        assertThat(proposed().change().leavesDamage()).isTrue();

        robot.clickOn("#damage-freelost");
        window.settle();

        assertThat(proposed().change().leavesDamage()).isFalse();
        robot.clickOn("#strip-make");
        window.settle();
        assertThat(page()).contains("No damage was seen");
    }

    @Test
    void aMountedFolderSaysWhyItCannotBeLookedAt() throws Exception {
        Path boot = SmallCards.mounted(folder, "arm_freq=2000\n");
        look(boot);
        assertThat(page()).contains("A mounted folder cannot be repaired", "The list on the left shows the cards");
        assertThat(robot.lookup("#damage-repair").queryAll()).isEmpty();
    }

    @Test
    void aFullCardIsOverwrittenInPlaceOnceThatIsChosen() throws Exception {
        look(SmallCards.writeFull(folder, "full.img", "arm_freq=2000\n"));
        assertThat(model().change().state().get()).isInstanceOf(ChangeState.Failed.class);

        robot.clickOn("#strip-inplace");
        window.settle();
        assertThat(proposed().change().plan().inPlace()).isTrue();
        robot.clickOn("#strip-inplace");
        window.settle();
        assertThat(model().change().state().get()).isInstanceOf(ChangeState.Failed.class);

        robot.clickOn("#strip-inplace");
        window.settle();
        robot.clickOn("#strip-make");
        window.settle();
        assertThat(model().change().state().get()).isInstanceOf(ChangeState.Done.class);
    }

    @Test
    void aChangeThatWasInterruptedComesBeforeAnyRepair() throws Exception {
        Path card = SmallCards.write(folder, "lab-01.img", SmallCards.TUNED);
        CutChange.leave(card, folder.resolve("home"));
        look(card);
        assertThat(page()).contains("Finish it or undo it in the change strip");

        robot.clickOn("#strip-reverse");
        window.settle();
        assertThat(page()).contains("No damage was seen");
    }

    private void look(Path card) throws Exception {
        robot.interact(() -> {
            window.model().look(card);
            window.desk().showPage("damage");
        });
        window.settle();
    }

    private CardModel model() {
        return window.model().current().get().orElseThrow();
    }

    private ChangeState.Proposed proposed() {
        return (ChangeState.Proposed) model().change().state().get();
    }

    /** Everything that can be read on the page. */
    private String page() {
        return robot
                .from(robot.lookup("#damage-page").queryAll())
                .lookup((Node node) -> node instanceof Labeled || node instanceof TextInputControl)
                .queryAll()
                .stream()
                .map(node -> node instanceof Labeled labeled ? labeled.getText() : ((TextInputControl) node).getText())
                .collect(Collectors.joining("\n"));
    }
}
