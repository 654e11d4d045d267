package bootmend.gui.view;

import bootmend.gui.DemoWorkplace;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.TitledPane;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/** Writes pictures of the demo's profiles and trials, as {@link ScreenshotTour} does of the rest; run by name. */
class TuningTour {

    private static final Path OUT = Path.of(System.getProperty("bootmend.screenshots", "target/screenshots"));

    @TempDir
    private Path folder;

    @Test
    void profilesAndTrials() throws Exception {
        for (int[] size : List.of(new int[] {1280, 800}, new int[] {1920, 1080})) {
            DemoWorkplace demo = DemoWorkplace.in(folder.resolve("demo-" + size[0]));
            try (WindowOverFolder window = new WindowOverFolder(demo.workplace(), size[0], size[1])) {
                tour(window, demo, "-" + size[0] + "x" + size[1]);
            }
        }
    }

    private void tour(WindowOverFolder window, DemoWorkplace demo, String size) throws Exception {
        Hands hands = new Hands(window);
        FxRobot robot = new FxRobot();
        hands.look(demo.cards().get(2));
        hands.page("profiles");
        hands.press("#profile-compare");
        shoot(window, "profiles-good" + size);
        hands.act(() -> window.model().current().get().orElseThrow().setBoard(Optional.of("pi4")));
        hands.act(() ->
                robot.lookup("#profiles").queryListView().getSelectionModel().select(1));
        hands.press("#profile-put");
        hands.press("#profile-delete");
        shoot(window, "profiles-other-board" + size);
        hands.press("#profiles-save");
        shoot(window, "profiles-save" + size);
        hands.page("trials");
        shoot(window, "trials-chart" + size);
        hands.press("#trials-next");
        hands.press("#stage-put");
        hands.press("#strip-make");
        shoot(window, "trials-staged" + size);
        hands.press("#trials-chart");
        hands.act(() -> ((TitledPane) robot.lookup("#chart-words").query()).setExpanded(true));
        shoot(window, "trials-words" + size);
        hands.press("#trials-table");
        hands.act(() ->
                robot.lookup("#trials").queryTableView().getSelectionModel().select(3));
        shoot(window, "trials-table" + size);
        hands.press("#trials-add");
        hands.press("#adding-keep");
        shoot(window, "trials-add" + size);
    }

    private static void shoot(WindowOverFolder window, String name) throws Exception {
        for (boolean dark : List.of(false, true)) {
            new Hands(window).act(() -> window.desk().setDark(dark));
            // Two pulses lay out what a change of style moved.
            Thread.sleep(120);
            Picture.write(window.picture(), OUT.resolve(name + (dark ? "-dark" : "-light") + ".png"));
        }
    }
}
