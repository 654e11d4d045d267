package bootmend.gui;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the window's command line asks for. */
class StartWishTest {

    @TempDir
    private Path folder;

    @Test
    void cardsAreOpenedAndADemoHasItsFolder() throws CardException, IOException {
        assertThat(StartWish.of(List.of("a.img", "b.img")))
                .isEqualTo(new StartWish(false, List.of(Path.of("a.img"), Path.of("b.img"))));
        assertThat(StartWish.of(List.of("--demo", folder.resolve("cards").toString()))
                        .demoFolder())
                .isEqualTo(folder.resolve("cards"))
                .isDirectory();
        assertThat(StartWish.of(List.of())).isEqualTo(new StartWish(false, List.of()));
    }

    @Test
    void whatMakesNoSenseIsToldWithWhatToDo() {
        for (List<String> wrong : List.of(List.of("--wrong"), List.of("--demo", "a", "b"), List.of("a\0b"))) {
            assertThatThrownBy(() -> StartWish.of(wrong)).isInstanceOfSatisfying(CardException.class, error -> {
                assertThat(error.kind()).isEqualTo(CardException.Kind.USAGE);
                assertThat(error.remedy()).isNotBlank();
            });
        }
    }

    @Test
    void aDemoFolderThatCannotBeMadeIsRefused() throws IOException {
        Path file = Files.writeString(folder.resolve("in the way"), "a file");

        assertThatThrownBy(
                        () -> StartWish.of(List.of("--demo", file.toString())).demoFolder())
                .isInstanceOfSatisfying(
                        CardException.class, error -> assertThat(error.kind()).isEqualTo(CardException.Kind.REFUSED));
    }
}
