package bootmend.gui.view;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.fixtures.ChainCard;
import bootmend.fixtures.DemoCard;
import bootmend.fixtures.DemoCards;
import bootmend.gui.SmallCards;
import bootmend.gui.model.CardModel;
import bootmend.gui.model.ChangeState;
import bootmend.operation.ChangeRequest;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.ToggleButton;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/** The answer to "why does it not boot" as a user meets it, on the page that comes first. */
class BootPageTest {

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
    void aTunedCardThatIsWholeLeadsToStock() throws Exception {
        DemoCard demo = DemoCards.all().get(0);
        Path card = folder.resolve(demo.fileName());
        DemoCards.build(demo).writeTo(card);
        look(card, "pi4");

        assertThat(page()).contains("Boots as far as the card can tell", "above stock", "over_voltage");
        assertThat(header()).contains("Boots, as far as the card tells");
        assertThat(tiles())
                .hasSize(10)
                .allSatisfy(tile -> assertThat(tile.getStyleClass()).contains("boot-link-whole"));
        robot.clickOn("#boot-reset");
        window.settle();
        assertThat(proposed()).isEqualTo(ChangeRequest.ToStock.PLAIN);
    }

    @Test
    void aLinkTellsWhatItRestsOn() throws Exception {
        look(card("whole.img", new ChainCard().putAll(ChainCard.everyBoard())), "pi4");
        assertThat(page()).doesNotContain("fixup4.dat");

        ToggleButton firmware = tiles().stream()
                .filter(tile -> tile.getAccessibleText().startsWith("boot firmware"))
                .findFirst()
                .orElseThrow();
        robot.clickOn(firmware);
        assertThat(page()).contains("start4.elf", "fixup4.dat");
    }

    @Test
    void aMissingStartFileIsTheCauseAndNoChangeIsOfferedForIt() throws Exception {
        look(card("nostart.img", new ChainCard().putAll(ChainCard.everyBoard()).remove("start4.elf")), "pi4");

        assertThat(page())
                .contains("Stops at the boot firmware", "start4.elf", "from a card or package of the same kind");
        assertThat(header()).contains("Does not boot: boot firmware");
        assertThat(robot.lookup("#boot-page .button").queryAll()).isEmpty();
    }

    @Test
    void damageThatARepairEndsIsWhatTheStripLeadsWith() throws Exception {
        look(SmallCards.writeDamaged(folder, "boot-sector-zeroed"), "pi4");
        assertThat(page()).contains("Stops at the");
        assertThat(proposed()).isEqualTo(ChangeRequest.Repair.PLAIN);
    }

    private Path card(String name, ChainCard card) throws IOException {
        Path path = folder.resolve(name);
        card.build().writeTo(path);
        return path;
    }

    private void look(Path card, String board) throws Exception {
        WindowOverFolder.onScreen(() -> {
            window.model().look(card);
            model().setBoard(Optional.of(board));
            window.desk().showPage("boot");
            return null;
        });
        window.settle();
    }

    private CardModel model() {
        return window.model().current().get().orElseThrow();
    }

    private ChangeRequest proposed() {
        return ((ChangeState.Proposed) model().change().state().get())
                .change()
                .order()
                .request();
    }

    private List<ToggleButton> tiles() {
        return robot.lookup("#boot-page .boot-link").queryAllAs(ToggleButton.class).stream()
                .toList();
    }

    private String page() {
        return texts("#boot-page");
    }

    private String header() {
        return texts("#card-marks");
    }

    private String texts(String root) {
        return robot.lookup(root).lookup((Node node) -> true).queryAll().stream()
                .flatMap(node -> node instanceof Labeled labeled
                        ? Stream.of(labeled.getText())
                        : node instanceof TextInputControl input ? Stream.of(input.getText()) : Stream.empty())
                .collect(Collectors.joining("\n"));
    }
}
