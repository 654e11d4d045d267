package bootmend.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.request.CardRequest;
import bootmend.view.CardView;
import bootmend.view.ShowJob;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Images packed by the real programs, as they come from whoever hands images out, shown as the image itself is. */
class PackedToolsTest {

    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource({
        "gzip, gz, gzip -k %s",
        "gzip, gz, gzip -k --fast %s",
        "xz, xz, xz -k %s",
        "xz, xz, xz -k -9e %s",
        "xz, xz, xz -k -T2 --block-size=1MiB %s",
        "zstd, zst, zstd -q %s",
        "zstd, zst, zstd -q -19 --no-check %s",
        "zip, zip, zip -q %s.zip %s",
        "zip, zip, zip -q -0 %s.zip %s",
    })
    void aPackedImageShowsWhatTheImageShows(String program, String suffix, String command)
            throws CardException, IOException {
        Tool.need(program);
        Path image = image();
        Tool.run(command.replace("%s", image.toString()).split(" "));
        Path packed = Path.of(image + "." + suffix);

        CardView plain = show(image);
        CardView shown = show(packed);

        assertThat(shown.kind()).isEqualTo("packed image file");
        assertThat(shown.bytes()).isEqualTo(Files.size(packed));
        assertThat(shown.partition())
                .usingRecursiveComparison()
                .ignoringFields("sectors")
                .isEqualTo(plain.partition());
        assertThat(shown.config()).isEqualTo(plain.config()).isPresent();
        assertThat(shown.tuning()).isEqualTo(plain.tuning()).hasSize(2);
        assertThat(shown.notes()).isEqualTo(plain.notes());
    }

    private CardView show(Path card) throws CardException, IOException {
        return new ShowJob(Workplace.ofThisComputer(folder.resolve("home"))).run(CardRequest.of(card));
    }

    private Path image() throws IOException {
        FatSpec spec = FatSpec.fat16(5000).label("LAB").serial(0x0000BEEF).build();
        SparseDisk disk = spec.emptyDisk();
        byte[] kernel = new byte[900_000];
        new Random(5).nextBytes(kernel);
        new FatBuilder(spec)
                .file("kernel8.img", kernel)
                .file("config.txt", "arm_freq=2100\n[pi4]\nover_voltage=6\n".getBytes(StandardCharsets.US_ASCII))
                .writeTo(disk, 0);
        Path file = folder.resolve("lab.img");
        disk.writeTo(file);
        return file;
    }
}
