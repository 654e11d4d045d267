package bootmend.gui.view;

import bootmend.fixtures.DemoCard;
import bootmend.fixtures.DemoCards;
import bootmend.gui.model.Wish;
import bootmend.job.UndoRequest;
import bootmend.job.Workplace;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

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
        act(window, () -> window.desk().showPage("sheet"));
        act(window, () -> window.model().current().get().orElseThrow().change().make());
        shoot(window, "done" + size);
        act(window, () -> window.model().current().get().orElseThrow().change().choose(new Wish.TakeBack(UndoRequest.LAST)));
        act(window, () -> window.model().current().get().orElseThrow().change().make());
        Path cut = Files.copy(cards.get(2), folder.resolve("lab-card-06-cut-short" + size + ".img"));
        CutChange.leave(cut, window.model().services().workplace().home());
        act(window, () -> window.model().look(cut));
        shoot(window, "cut-short" + size);
        Path spoiled = Files.write(folder.resolve("holiday-pictures.img"), new byte[1 << 20]);
        act(window, () -> window.model().look(spoiled));
        shoot(window, "no-card" + size);
        act(window, () -> window.model().together(cards));
        shoot(window, "batch" + size);
    }

    private static void act(WindowBench window, Runnable action) throws Exception {
        WindowBench.onScreen(() -> {
            action.run();
            return null;
        });
        window.settle();
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
