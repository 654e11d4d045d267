package bootmend.gui.view;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.fixtures.DemoCard;
import bootmend.fixtures.DemoCards;
import bootmend.gui.SmallCards;
import bootmend.gui.model.CardModel;
import bootmend.gui.model.ChangeState;
import bootmend.view.AttachedCard;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.ListView;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.Clipboard;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/** The window's main job, as a user does it: open, look, preview, put back, undo. */
class WindowTest {

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
    void beforeACardIsInTheWindowSaysHowToBeginAndToCloseAnEraseDialog() throws Exception {
        assertThat(texts("#start-page")).contains("Reading a card writes nothing.");
        assertThat(texts("#erase-banner")).contains("If your desktop offers to erase this card, close that dialog.");
    }

    @Test
    void aDemoCardIsPutBackToStockAndTakenBackWithThreeClicks() throws Exception {
        DemoCard demo = DemoCards.all().get(0);
        Path card = folder.resolve(demo.fileName());
        DemoCards.build(demo).writeTo(card);
        byte[] before = Files.readAllBytes(card);
        window.answers().images = List.of(card);

        click("#cards-open");

        assertThat(texts("#card-marks")).contains("4 lines tune it");
        assertThat(texts("#lines")).contains("arm_freq=2350");
        assertThat(texts("#strip-body"))
                .contains("arm_freq=2350")
                .contains("#arm_freq=2350")
                .contains("8 sectors")
                .contains(folder.resolve("home").toString());
        assertThat(Files.mismatch(card, Files.write(folder.resolve("copy"), before)))
                .isEqualTo(-1);

        click("#strip-make");

        assertThat(texts("#strip-body")).contains("Done.").contains("The card is safe to take out.");
        assertThat(texts("#card-marks")).contains("At stock");

        click("#strip-back");
        click("#strip-make");

        assertThat(texts("#strip-body")).contains("Done.");
        assertThat(texts("#card-marks")).contains("4 lines tune it");
        assertThat(Files.mismatch(card, folder.resolve("copy"))).isEqualTo(-1);
    }

    @Test
    void theWholeJobGoesByKeyboard() throws Exception {
        Path card = SmallCards.write(folder, "lab-01.img", SmallCards.TUNED);
        window.answers().images = List.of(card);

        press(KeyCode.CONTROL, KeyCode.O);
        press(KeyCode.CONTROL, KeyCode.B);
        press(KeyCode.CONTROL, KeyCode.ENTER);

        assertThat(texts("#strip-body")).contains("Done.");

        press(KeyCode.CONTROL, KeyCode.Z);
        press(KeyCode.CONTROL, KeyCode.ENTER);

        assertThat(Files.readString(card, StandardCharsets.ISO_8859_1)).contains("\narm_freq=2000\n");
    }

    @Test
    void theBoardThatIsChosenGivesTheValues() throws Exception {
        Path card = SmallCards.write(folder, "lab-01.img", SmallCards.TUNED);
        look(card);

        WindowOverFolder.onScreen(() -> {
            ComboBox<String> board = robot.lookup("#board").queryComboBox();
            board.setValue("pi4");
            return null;
        });
        window.settle();

        // Stock clock of 1500 MHz: "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446.
        assertThat(texts("#tiles")).contains("+33 % against stock");
        assertThat(window.model().settings().board()).contains("pi4");
    }

    @Test
    void aCardThatIsPulledIsToldAndComesBack() throws Exception {
        Path card = SmallCards.write(folder, "lab-01.img", SmallCards.TUNED);
        AttachedCard attached = new AttachedCard(
                card.toString(),
                1 << 20,
                "reader",
                "usb",
                true,
                false,
                AttachedCard.Boot.YES,
                "partition 0",
                Optional.empty(),
                List.of(),
                List.of());
        window.attach(List.of(attached));
        look(card);
        Path away = folder.resolve("pulled");
        Files.move(card, away);

        window.attach(List.of());

        assertThat(texts("#card-marks")).contains("Taken out");
        assertThat(texts("#strip-body")).contains("Put it back in to go on");
        assertThat(robot.lookup("#strip-make").tryQuery()).isEmpty();

        Files.move(away, card);
        window.attach(List.of(attached));

        assertThat(texts("#card-marks")).contains("2 lines tune it");
    }

    @Test
    void aCardThatIsPulledInTheMiddleOfALookEndsInASentenceNotAFreeze() throws Exception {
        Path card = SmallCards.write(folder, "lab-01.img", SmallCards.TUNED);
        look(card);
        Files.delete(card);

        press(KeyCode.CONTROL, KeyCode.R);

        assertThat(texts("#sheet-page")).contains("There is no such file or device.");
        assertThat(texts("#card-marks")).contains("Cannot be read");
    }

    @Test
    void darkAndLightAreKept() throws Exception {
        press(KeyCode.CONTROL, KeyCode.D);

        assertThat(window.model().settings().isDark()).isTrue();
        assertThat(window.desk().scene().getStylesheets()).anyMatch(sheet -> sheet.endsWith("dark.css"));
    }

    @Test
    void theWindowsPlaceIsKept() throws Exception {
        WindowOverFolder.onScreen(() -> {
            window.stage().setWidth(1100);
            window.stage().hide();
            return null;
        });

        assertThat(window.model().settings().measure("width")).hasValue(1100);
    }

    @Test
    void everyControlHasANameAndNoneFrightens() throws Exception {
        look(SmallCards.write(folder, "lab-01.img", SmallCards.TUNED));
        int seen = 0;

        for (String style : List.of(".button", ".combo-box", ".list-view", ".check-box")) {
            for (Node node : WindowOverFolder.onScreen(
                    () -> window.desk().scene().getRoot().lookupAll(style))) {
                if ("list-view".equals(node.getId())) {
                    // Inside a combo box, which has the name.
                    continue;
                }
                String name =
                        (node instanceof Labeled labeled ? labeled.getText() : "") + " " + node.getAccessibleText();
                seen++;
                assertThat(name.replace("null", "").strip()).as(node.toString()).isNotEmpty();
                assertThat(name.toLowerCase(Locale.ROOT)).doesNotContain("format");
            }
        }
        assertThat(seen).isGreaterThan(8);
    }

    @Test
    void everyButtonCanBeReachedByTab() throws Exception {
        look(SmallCards.write(folder, "lab-01.img", SmallCards.TUNED));

        assertThat(robot.lookup(".button").queryAllAs(Button.class).stream()
                        .filter(Node::isVisible)
                        .filter(button -> button.getId() != null && !button.isDisabled()))
                .isNotEmpty()
                .allMatch(Node::isFocusTraversable);
    }

    @Test
    void chosenLinesAreCopied() throws Exception {
        look(SmallCards.write(folder, "lab-01.img", SmallCards.TUNED));
        WindowOverFolder.onScreen(() -> {
            window.desk().showPage("sheet");
            return null;
        });

        WindowOverFolder.onScreen(() -> {
            ListView<?> lines = robot.lookup("#lines").queryListView();
            lines.requestFocus();
            lines.getSelectionModel().clearSelection();
            lines.getSelectionModel().selectRange(1, 3);
            return null;
        });
        press(KeyCode.CONTROL, KeyCode.C);

        assertThat(WindowOverFolder.onScreen(
                        () -> Clipboard.getSystemClipboard().getString()))
                .isEqualTo("arm_freq=2000\nover_voltage=6");
    }

    @Test
    void aChangeThatWasInterruptedIsFinishedFromTheStrip() throws Exception {
        Path card = SmallCards.write(folder, "lab-01.img", SmallCards.TUNED);
        CutChange.leave(card, folder.resolve("home"));

        look(card);

        assertThat(texts("#strip-body")).contains("was interrupted");
        click("#strip-finish");
        assertThat(texts("#strip-body")).contains("Done.");
        CardModel model = window.model().current().get().orElseThrow();
        assertThat(model.change().state().get()).isInstanceOf(ChangeState.Done.class);
        assertThat(texts("#card-marks")).contains("At stock");
    }

    private void look(Path card) throws Exception {
        WindowOverFolder.onScreen(() -> {
            window.model().look(card);
            return null;
        });
        window.settle();
    }

    private void click(String id) throws Exception {
        robot.clickOn(id);
        window.settle();
    }

    private void press(KeyCode... keys) throws Exception {
        robot.push(keys);
        window.settle();
    }

    /** Every text below a node, as a user reads it. */
    private String texts(String id) throws Exception {
        return WindowOverFolder.onScreen(() -> {
            Node root = robot.lookup(id).query();
            root.applyCss();
            return robot
                    .from(root)
                    .lookup((Node node) -> node instanceof Label || node instanceof TextInputControl)
                    .queryAll()
                    .stream()
                    .map(node -> node instanceof Label label ? label.getText() : ((TextInputControl) node).getText())
                    .collect(Collectors.joining("\n"));
        });
    }
}
