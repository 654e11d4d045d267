package bootmend.gui.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import bootmend.finding.Purpose;
import bootmend.gui.SmallCards;
import bootmend.gui.model.CardModel;
import bootmend.gui.model.ChangeState;
import bootmend.gui.model.RequestKey;
import bootmend.gui.model.SheetRow;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.print.Printer;
import javafx.scene.Node;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.ListView;
import javafx.scene.control.TabPane;
import javafx.scene.control.TextArea;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/** The check as a user meets it: verdict, findings, the way to a line, and the slip. */
class PurposePageTest {

    private static final String CONFIG = "# lab cart\n\narm_freq=2000\nover_voltage=4\n";

    private final FxRobot robot = new FxRobot();

    @TempDir
    private Path folder;

    private WindowOverFolder window;

    @BeforeEach
    void open() throws Exception {
        window = new WindowOverFolder(folder.resolve("home"));
        Path image = SmallCards.write(folder, "lab-07.img", CONFIG);
        robot.interact(() -> {
            window.model().look(image);
            window.desk().showPage("check");
        });
        window.settle();
    }

    @AfterEach
    void close() throws Exception {
        window.close();
    }

    @Test
    void theVerdictIsForTheChosenPurpose() throws Exception {
        assertThat(texts("#check-verdict")).contains("Not ready to ship:");
        assertThat(texts("#check-findings")).contains("What to do: ").contains("Source: ");

        robot.clickOn("#check-for-stability-run");
        window.settle();

        assertThat(model().purpose().get()).isEqualTo(Purpose.STABILITY_RUN);
        assertThat(texts("#check-verdict")).contains("for a stability run");
    }

    @Test
    void theSlipIsSavedWhereTheUserSaidAndHoldsTheLabel() throws Exception {
        Path file = folder.resolve("slip.html");
        window.answers().save = Optional.of(file);

        robot.clickOn("#check-save");
        window.settle();

        assertThat(texts("#check-slip")).contains(file.toString());
        assertThat(Files.readString(file)).contains("Label</dt><dd>LAB<", "lab-07.img");
    }

    @Test
    void aFindingLeadsToItsLine() throws Exception {
        Hyperlink link = robot.lookup(".finding-line").queryAll().stream()
                .map(Hyperlink.class::cast)
                .filter(each -> each.getAccessibleText().contains("line 4 "))
                .findFirst()
                .orElseThrow();
        robot.interact(link::fire);
        window.settle();

        TabPane pages = robot.lookup("#pages").queryAs(TabPane.class);
        assertThat(pages.getSelectionModel().getSelectedItem().getId()).isEqualTo("tab-sheet");
        ListView<?> lines = robot.lookup("#lines").queryAs(ListView.class);
        assertThat(lines.getSelectionModel().getSelectedItems())
                .singleElement()
                .isInstanceOfSatisfying(
                        SheetRow.Line.class,
                        row -> assertThat(row.line().number()).isEqualTo(4));
    }

    @Test
    void stockIsWorkedOutBeforeAFirmwareUpdateOnly() throws Exception {
        assertThat(robot.lookup("#check-stock").queryAll()).isEmpty();
        robot.clickOn("#check-for-firmware-update");
        window.settle();
        robot.interact(() -> model().change().forget());

        robot.clickOn("#check-stock");
        window.settle();

        assertThat(model().change().state().get())
                .isInstanceOfSatisfying(
                        ChangeState.Proposed.class,
                        proposed -> assertThat(
                                        RequestKey.of(proposed.change().order().request()))
                                .isEqualTo("stock"));
        robot.clickOn("#strip-make");
        window.settle();
        assertThat(robot.lookup("#check-stock").queryAll()).isEmpty();
    }

    @Test
    void withoutAPrinterSavingIsOffered() throws Exception {
        assumeTrue(WindowOverFolder.onScreen(Printer::getAllPrinters).isEmpty(), "this computer has a printer");
        Path file = folder.resolve("instead.html");
        window.answers().save = Optional.of(file);

        robot.clickOn("#check-print");
        robot.clickOn("#check-save-instead");
        window.settle();

        assertThat(file).exists();
    }

    private CardModel model() {
        return window.model().current().get().orElseThrow();
    }

    private String texts(String box) {
        Set<Node> found =
                robot.from(robot.lookup(box).queryAll()).lookup(".prose").queryAll();
        return found.stream().map(node -> ((TextArea) node).getText()).collect(Collectors.joining("\n"));
    }
}
