package bootmend.gui.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bootmend.gui.LabRecords;
import bootmend.gui.SmallCards;
import java.nio.file.Path;
import javafx.scene.Group;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TableView;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Trials as a user sees them, adds to them and stages what is suggested. */
class TrialsPageTest {

    @TempDir
    private Path folder;

    private WindowOverFolder window;
    private Hands hands;

    @BeforeEach
    void open() throws Exception {
        window = new WindowOverFolder(folder.resolve("home"));
        hands = new Hands(window);
    }

    @AfterEach
    void close() throws Exception {
        window.close();
    }

    @Test
    void withoutATrialThePageSaysHowToBegin() throws Exception {
        hands.page("trials");

        assertThat(hands.texts("#trials-empty")).contains("begin with the board at stock");
    }

    @Test
    void theDemosBoardIsDrawnAndAdvisedOn() throws Exception {
        fill();

        Node chart = hands.find("#trial-chart");
        assertThat(chart.getAccessibleText())
                .contains(
                        "Trials of lab-07 (pi4).",
                        "At 1900 MHz: at voltage step 2 it failed; at voltage step 3 it held.");
        assertThat(hands.texts("#trial-chart"))
                .contains(
                        "above step 6: needs force_turbo, which can void the warranty",
                        "85 degC: the board's own limit",
                        "voltage step (over_voltage)",
                        "1900");
        for (String mark : new String[] {
            "known-good", "held", "no-boot", "locks-up", "misbehaves", "throttled", "undecided", "next"
        }) {
            assertThat(WindowOverFolder.onScreen(() -> chart.lookupAll(".trial-" + mark)))
                    .as(mark)
                    .isNotEmpty();
        }
        assertThat(WindowOverFolder.onScreen(() -> chart.lookupAll(".stair-held")))
                .hasSize(1);
        assertThat(WindowOverFolder.onScreen(() -> chart.lookupAll(".stair-failed")))
                .hasSize(1);
        assertThat(hands.texts("#trial-legend"))
                .contains(
                        "throttled: heat or supply",
                        "lowest voltage that held, at this clock or a higher one",
                        "chance to hold 45 minutes: 95, 80, 50, 20, 5 % and more");
        assertThat(((Label) hands.find("#trials-headline")).getText()).isEqualTo("lab-07 (pi4)");
        assertThat(hands.texts("#next-trial"))
                .contains(
                        "Try 2075 MHz at voltage step 5 for 12 minutes under full load.",
                        "tells most for its minutes",
                        "If it fails while it runs: ",
                        "plus or minus",
                        "Fastest that held: 2000 MHz at voltage step 4, known-good.",
                        "cautions for heat, voltage and warranty");
        assertThat(hands.find("#stage-put").isDisabled()).isTrue();
        assertThat(hands.texts("#stage-whynot")).contains("Open a card first");
    }

    /** A mark to the right of another has the higher clock, one above it the higher step. */
    @Test
    void marksStandWhereTheirSettingsAre() throws Exception {
        fill();
        Node chart = hands.find("#trial-chart");
        Node held = parentOf(chart, ".trial-held");
        Node locked = parentOf(chart, ".trial-locks-up");
        Node dead = parentOf(chart, ".trial-no-boot");

        // 1750 MHz and 1900 MHz at step 0, 2000 MHz at step 3.
        assertThat(locked.getLayoutY()).isEqualTo(held.getLayoutY());
        assertThat(dead.getLayoutY()).isLessThan(held.getLayoutY());
        assertThat((dead.getLayoutX() - locked.getLayoutX()) / (locked.getLayoutX() - held.getLayoutX()))
                .isCloseTo(100.0 / 150, within(0.001));
    }

    @Test
    void whatIsSuggestedIsStagedAndKept() throws Exception {
        fill();
        hands.look(SmallCards.write(folder, "lab-07.img", "dtparam=audio=on\n"));

        // The strip beside it leaves no room for the advice beside the chart.
        assertThat(((Label) hands.find("#trials-headline")).getText())
                .isEqualTo("Next: Try 2075 MHz at voltage step 5 for 12 minutes under full load.");
        hands.click("#trials-next");
        hands.click("#stage-put");
        assertThat(hands.texts("#strip-body")).contains("Stage settings for one try", "arm_freq=2075");
        hands.click("#strip-make");
        assertThat(hands.texts("#stage-staged")).contains("sudo reboot '0 tryboot'");

        hands.click("#stage-keep");
        assertThat(hands.texts("#strip-body")).contains("Keep the staged settings");
        hands.click("#strip-make");
        assertThat(hands.texts("#strip-body")).contains("Done.");
        assertThat(hands.isThere("#stage-staged")).isFalse();
    }

    @Test
    void aTrialIsAddedAndListed() throws Exception {
        hands.page("trials");
        hands.click("#trials-add");
        hands.type("#adding-label", "lab-11");
        hands.choose("#adding-board", "pi4");
        hands.type("#adding-clock", "quick");
        hands.choose("#adding-outcome", "holds");
        hands.press("#adding-keep");
        assertThat(hands.texts("#adding-result")).contains("Arm_freq=quick is no setting.");

        hands.type("#adding-clock", "1600");
        hands.press("#adding-keep");

        assertThat(hands.texts("#adding-result"))
                .contains("The trial was kept", "It is not known-good: it held, but not under full load.");
        hands.click("#trials-table");
        TableView<?> table = (TableView<?>) hands.find("#trials");
        assertThat(table.getItems()).hasSize(1);
        hands.act(() -> table.getSelectionModel().select(0));
        assertThat(hands.texts("#trial-whole")).contains("lab-11 (pi4), arm_freq=1600: holds");
    }

    private static Node parentOf(Node chart, String style) throws Exception {
        Node mark = WindowOverFolder.onScreen(() -> chart.lookup(style));
        return mark.getParent() instanceof Group place ? place : mark;
    }

    private void fill() throws Exception {
        LabRecords.fill(window.model().services().workplace(), folder);
        hands.page("trials");
    }
}
