package bootmend.device.system;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A C library that the helper library's native part does not load on, as it is told apart by the library itself. */
class HelperLibraryTest {

    @TempDir
    private Path folder;

    @Test
    void imagesAndTheListWorkWithoutIt() throws IOException {
        assumeTrue(System.getProperty("os.name").startsWith("Linux"), "for Linux's disks alone: skipped");
        Path image = Files.write(folder.resolve("card.img"), new byte[4096]);

        Programs.Result result = new LimitedPrograms(Duration.ofSeconds(60), 1 << 20)
                .run(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Djna.boot.library.path=" + folder,
                        "-Djna.nosys=true",
                        "-Djna.noclasspath=true",
                        "-cp",
                        System.getProperty("java.class.path"),
                        WithoutHelper.class.getName(),
                        image.toString()));

        assertThat(result.errors()).doesNotContain("Exception", "Error");
        assertThat(result.output())
                .contains("image opened: 4096")
                .contains("disks listed: true")
                .contains("held: the disks of this computer cannot be worked with");
        assertThat(result.code()).isZero();
    }
}
