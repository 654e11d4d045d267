package bootmend.gui.view;

import bootmend.fixtures.DemoCard;
import bootmend.fixtures.DemoCards;
import bootmend.gui.DemoBench;
import bootmend.job.Workplace;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.TitledPane;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testfx.api.FxRobot;

/** Writes a picture of every view, by day and by night, in two sizes; run by name, see DEVELOPERS.md. */
class ScreenshotTour {

    private static final Path OUT = Path.of(System.getProperty("bootmend.screenshots", "target/screenshots"));

    @TempDir
    private Path folder;

    @Test
    void everyView() throws Exception {
        DemoCards.writeAll(folder);
        for (int[] size : List.of(new int[] {1280, 800}, new int[] {1920, 1080})) {
            Path home = folder.resolve("records-" + size[0]);
            try (WindowBench window = new WindowBench(Workplace.ofThisComputer(home), size[0], size[1])) {
                tour(window, "-" + size[0] + "x" + size[1]);
            }
        }
        System.out.println("Pictures are in " + OUT.toAbsolutePath());
    }

    private void tour(WindowBench window, String size) throws Exception {
        List<Path> cards = DemoCards.all().stream().map(DemoCard::fileName).map(folder::resolve).toList();
        act(window, () -> window.model().offer(cards));
        shoot(window, "start" + size);
        act(window, () -> window.model().look(cards.get(0)));
        shoot(window, "sheet-any-board" + size);
        act(window, () -> window.model().current().get().orElseThrow().setBoard(Optional.of("pi4")));
        shoot(window, "sheet-one-board" + size);
        for (String page : List.of("check", "damage", "changes", "profiles", "trials")) {
            act(window, () -> window.desk().showPage(page));
            shoot(window, page + size);
        }
        act(window, () -> window.model().together(cards));
        shoot(window, "batch" + size);
    }

    @Test
    void profilesAndTrialsOfTheDemo() throws Exception {
        for (int[] size : List.of(new int[] {1280, 800}, new int[] {1920, 1080})) {
            DemoBench demo = DemoBench.in(folder.resolve("demo-" + size[0]));
            try (WindowBench window = new WindowBench(demo.workplace(), size[0], size[1])) {
                tuning(window, demo, "-" + size[0] + "x" + size[1]);
            }
        }
    }

    private void tuning(WindowBench window, DemoBench demo, String size) throws Exception {
        act(window, () -> window.model().look(demo.cards().get(2)));
        act(window, () -> window.desk().showPage("profiles"));
        fire(window, "#profile-compare");
        shoot(window, "profiles-good" + size);
        act(window, () -> window.model().current().get().orElseThrow().setBoard(Optional.of("pi4")));
        act(window, () -> new FxRobot().lookup("#profiles").queryListView().getSelectionModel().select(1));
        fire(window, "#profile-put");
        fire(window, "#profile-delete");
        shoot(window, "profiles-other-board" + size);
        fire(window, "#profiles-save");
        shoot(window, "profiles-save" + size);
        act(window, () -> window.desk().showPage("trials"));
        shoot(window, "trials-chart" + size);
        fire(window, "#trials-next");
        fire(window, "#stage-put");
        fire(window, "#strip-make");
        shoot(window, "trials-staged" + size);
        act(window, () -> ((TitledPane) new FxRobot().lookup("#chart-words").query()).setExpanded(true));
        fire(window, "#trials-table");
        act(window, () -> new FxRobot().lookup("#trials").queryTableView().getSelectionModel().select(3));
        shoot(window, "trials-table" + size);
        fire(window, "#trials-add");
        fire(window, "#adding-keep");
        shoot(window, "trials-add" + size);
    }

    private static void fire(WindowBench window, String button) throws Exception {
        act(window, () -> ((ButtonBase) new FxRobot().lookup(button).query()).fire());
    }

    private static void act(WindowBench window, Runnable action) throws Exception {
        WindowBench.onScreen(() -> {
            action.run();
            return null;
        });
        window.settle();
        // What a scroll pane shows is there after the next pulse.
        Thread.sleep(60);
    }

    private static void shoot(WindowBench window, String name) throws Exception {
        for (boolean dark : List.of(false, true)) {
            act(window, () -> window.desk().setDark(dark));
            // Two pulses lay out what a change of style moved.
            Thread.sleep(120);
            Picture.write(window.picture(), OUT.resolve(name + (dark ? "-dark" : "-light") + ".png"));
        }
    }
}
