package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the window remembers. */
class WindowSettingsTest {

    @TempDir
    private Path folder;

    @Test
    void whatWasSavedIsThereAtTheNextStart() {
        Path file = folder.resolve("home").resolve("window.properties");
        WindowSettings settings = WindowSettings.load(file);
        settings.setBoard(Optional.of("pi4"));
        settings.setDark(true);
        settings.setMeasure("width", 1400);
        settings.remember(folder.resolve("a b.img"));
        settings.save();

        WindowSettings next = WindowSettings.load(file);

        assertThat(next.board()).contains("pi4");
        assertThat(next.isDark()).isTrue();
        assertThat(next.measure("width")).hasValue(1400);
        assertThat(next.cards()).containsExactly(folder.resolve("a b.img").toAbsolutePath());
    }

    @Test
    void theLatestTwelveCardsAreKeptEachOnceTheLatestFirst() {
        WindowSettings settings = WindowSettings.load(folder.resolve("window.properties"));
        for (int i = 0; i < 20; i++) {
            settings.remember(folder.resolve("lab-" + i + ".img"));
        }
        settings.remember(folder.resolve("lab-15.img"));

        assertThat(settings.cards())
                .hasSize(12)
                .doesNotHaveDuplicates()
                .first()
                .isEqualTo(folder.resolve("lab-15.img").toAbsolutePath());
    }

    @Test
    void aSpoiledFileIsPassedOver() throws IOException {
        Path file = Files.writeString(
                folder.resolve("window.properties"),
                "window.width=a lot\nwindow.x=1e999\ndark=perhaps\nboard=\ncard.0=\\u0000bad\n");

        WindowSettings settings = WindowSettings.load(file);

        assertThat(settings.measure("width")).isEmpty();
        assertThat(settings.measure("x")).isEmpty();
        assertThat(settings.isDark()).isFalse();
        assertThat(settings.board()).isEmpty();
        assertThat(settings.cards()).isEmpty();
    }

    @Test
    void aFolderThatCannotBeWrittenToIsNoError() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "in the way").resolve("window.properties");
        WindowSettings settings = WindowSettings.load(file);

        settings.setDark(true);
        settings.save();

        assertThat(WindowSettings.load(file).isDark()).isFalse();
    }
}
