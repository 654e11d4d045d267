package bootmend.gui.view;

import bootmend.fixtures.DemoCard;
import bootmend.fixtures.DemoCards;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
        try (WindowBench window = new WindowBench(folder.resolve("records"))) {
            List<Path> cards = DemoCards.all().stream().map(DemoCard::fileName).map(folder::resolve).toList();
            WindowBench.onScreen(() -> {
                window.model().offer(cards);
                return null;
            });
            shoot(window, "start");
            WindowBench.onScreen(() -> {
                window.model().look(cards.get(0));
                return null;
            });
            shoot(window, "sheet-any-board");
        }
        System.out.println("Pictures are in " + OUT.toAbsolutePath());
    }

    private static void shoot(WindowBench window, String name) throws Exception {
        for (boolean dark : List.of(false, true)) {
            WindowBench.onScreen(() -> {
                window.desk().setDark(dark);
                return null;
            });
            for (int[] size : List.of(new int[] {1280, 800}, new int[] {1920, 1080})) {
                WindowBench.onScreen(() -> {
                    window.stage().setWidth(size[0]);
                    window.stage().setHeight(size[1]);
                    return null;
                });
                window.settle();
                Thread.sleep(250);
                Picture.write(window.picture(), OUT.resolve(name + "-" + (dark ? "dark" : "light") + "-" + size[0] + "x"
                        + size[1] + ".png"));
            }
        }
        Files.createDirectories(OUT);
    }
}
