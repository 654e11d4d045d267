package bootmend.gui.view;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.page.SlipContent;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.text.Text;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.testfx.api.FxToolkit;

/** A packing slip on paper: everything it says is on some sheet, in black, and nothing runs over an edge. */
class SlipPagesTest {

    private static final double WIDTH = 487;
    private static final double HEIGHT = 734;

    @BeforeAll
    static void toolkit() throws Exception {
        FxToolkit.registerPrimaryStage();
    }

    @Test
    void everythingIsOnSomeSheet() throws Exception {
        SlipContent slip = slip(24);
        List<Region> sheets = WindowOverFolder.onScreen(() -> new SlipPages(WIDTH, HEIGHT).of(slip));
        assertThat(sheets.size()).isBetween(2, 8);

        String all = String.join(
                "\n",
                sheets.stream()
                        .flatMap(sheet -> texts(sheet).stream())
                        .map(Text::getText)
                        .toList());
        assertThat(all)
                .contains("lab-07.img", "Not ready to ship", "LABBOOT", "sha256 ab", SlipContent.CAUTION)
                .contains(SlipContent.BLANKS);
        slip.groups()
                .forEach(group -> assertThat(all)
                        .contains(
                                group.rule(),
                                group.meaning(),
                                group.remedy(),
                                group.items().get(0).what(),
                                "Source: " + group.source()));
    }

    @Test
    void nothingRunsOverAnEdgeAndAllIsBlack() throws Exception {
        for (Region sheet : WindowOverFolder.onScreen(() -> new SlipPages(WIDTH, HEIGHT).of(slip(24)))) {
            for (Text text : texts(sheet)) {
                Bounds place = text.localToScene(text.getBoundsInLocal());
                assertThat(place.getMinY()).isGreaterThan(-2);
                assertThat(place.getMaxY()).as(text.getText()).isLessThan(HEIGHT + 2);
                assertThat(place.getMaxX()).as(text.getText()).isLessThan(WIDTH + 2);
                assertThat(text.getFill()).isEqualTo(Color.BLACK);
            }
        }
    }

    @Test
    void aTextThatWouldFillSheetsIsCut() throws Exception {
        SlipContent.Group group = new SlipContent.Group(
                "note",
                "long",
                List.of(new SlipContent.Item("config.txt line 1", "x".repeat(90_000), "")),
                "m",
                "r",
                "s");
        SlipContent slip = new SlipContent("lab-07.img", true, "Ready", List.of(), List.of(group));
        assertThat(WindowOverFolder.onScreen(() -> new SlipPages(WIDTH, HEIGHT).of(slip)))
                .hasSize(1);
    }

    private static SlipContent slip(int groups) {
        return new SlipContent(
                "lab-07.img",
                false,
                "Not ready to ship: 1 blocker, 0 warnings, 0 notes.",
                List.of(
                        new SlipContent.Fact("Label", "LABBOOT", ""),
                        new SlipContent.Fact("Config file", "config.txt, 565 bytes", "sha256 " + "ab".repeat(32))),
                IntStream.range(0, groups).mapToObj(SlipPagesTest::group).toList());
    }

    private static SlipContent.Group group(int number) {
        return new SlipContent.Group(
                number == 0 ? "blocker" : "warning",
                "rule-" + number,
                IntStream.range(0, 3)
                        .mapToObj(line -> new SlipContent.Item(
                                "config.txt line " + line,
                                "arm_freq=2350 is over what was published, for the " + number
                                        + "th time on this long line.",
                                "[pi4 cm4]"))
                        .toList(),
                "This is meaning number " + number + ".",
                "Do thing " + number + ".",
                "a document, page " + number);
    }

    private static List<Text> texts(Node node) {
        List<Text> texts = new ArrayList<>();
        if (node instanceof Text text) {
            texts.add(text);
        } else if (node instanceof Parent parent) {
            parent.getChildrenUnmodifiable().forEach(child -> texts.addAll(texts(child)));
        }
        return texts;
    }
}
