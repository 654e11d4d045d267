package bootmend.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import bootmend.fixtures.BootFiles;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a file's head says, against the published layouts and against programs that others wrote for them. */
class BootFileHeadTest {

    @TempDir
    private Path folder;

    /** ELF specification 1.2, book I, "ELF Identification": magic, then class 1 or 2, data 1 or 2, version 1. */
    @ParameterizedTest(name = "byte {0} = {1}: {2}")
    @CsvSource({
        "0, 127, true",
        "0, 126, false",
        "1, 101, false",
        "4, 2, true",
        "4, 3, false",
        "4, 0, false",
        "5, 2, true",
        "5, 0, false",
        "6, 0, false"
    })
    void elfIdentification(int at, int value, boolean elf) {
        byte[] head = Arrays.copyOf(BootFiles.named("start.elf", 512), 64);
        head[at] = (byte) value;
        assertThat(BootFileHead.isElf(head)).isEqualTo(elf);
        assertThat(BootFileHead.isElf(Arrays.copyOf(head, 15))).isFalse();
    }

    @Test
    void readelfTakesTheSameFilesForElf() throws Exception {
        byte[] noMagic = BootFiles.named("start.elf", 2048);
        noMagic[1] = 'F';
        for (byte[] file : new byte[][] {
            BootFiles.named("start.elf", 2048),
            BootFiles.named("noise", 2048),
            noMagic,
            Files.readAllBytes(Path.of(System.getProperty("java.home"), "bin", "java"))
        }) {
            boolean theirs = ask(file, "readelf", "-h").contains("Magic:");
            assertThat(BootFileHead.isElf(Arrays.copyOf(file, Math.min(file.length, 4096))))
                    .isEqualTo(theirs);
        }
    }

    /** Devicetree Specification 0.4, section 5.2: fields of the header, all big-endian words. */
    @ParameterizedTest(name = "word {0} = {1}: {2}")
    @CsvSource({
        "0, 0xd00dfeed, ''",
        "0, 0xedfe0dd0, 'begins with 0xedfe0dd0, not 0xd00dfeed'",
        "4, 1000, ''",
        "4, 999, 'names blocks past its own end of 999 bytes'",
        "4, 1001, 'has 1000 bytes, but its header says 1001'",
        "4, 0xffffffff, 'has 1000 bytes, but its header says 4294967295'",
        "4, 39, 'but its header says 39'",
        "36, 0xffffffff, 'names blocks past'",
        "12, 1000, 'names blocks past'",
        "32, 0x7fffffff, 'names blocks past'"
    })
    void deviceTreeHeader(int at, String value, String problem) {
        byte[] tree = BootFiles.named("bcm2711-pi4.dtb", 1000);
        ByteBuffer.wrap(tree).putInt(at, Long.decode(value).intValue());
        assertThat(BootFileHead.deviceTreeProblem(tree, tree.length).orElse("")).contains(problem);
        assertThat(BootFileHead.deviceTreeProblem(tree, tree.length).isPresent())
                .isEqualTo(!problem.isEmpty());
    }

    @Test
    void fewerBytesThanADeviceTreesHeader() {
        byte[] tree = BootFiles.named("bcm2711-pi4.dtb", 1000);
        assertThat(BootFileHead.deviceTreeProblem(Arrays.copyOf(tree, 39), 39)).isPresent();
    }

    @ParameterizedTest
    @ValueSource(strings = {"bcm2711-pi4.dtb", "noise"})
    void fileTakesTheSameFilesForDeviceTrees(String name) throws Exception {
        byte[] file = BootFiles.named(name, 3000);
        boolean theirs = ask(file, "file", "-b").startsWith("Device Tree Blob");
        assertThat(BootFileHead.deviceTreeProblem(file, file.length).isEmpty()).isEqualTo(theirs);
    }

    /** Magics: the kernel's arm64 boot protocol page and arm boot page (value from memory); RFC 1952, 2.3.1. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource({
        "kernel8.img, IMAGE_64, boot executable Image",
        "kernel7l.img, IMAGE_32, boot executable zImage",
        "noise, NONE, data"
    })
    void kernelsAndWhatFileSaysOfThem(String name, BootFileHead.Kernel kind, String theirs) throws Exception {
        byte[] file = BootFiles.named(name, 8192);
        assertThat(BootFileHead.kernel(file)).isEqualTo(kind);
        assertThat(ask(file, "file", "-b")).contains(theirs);
    }

    @Test
    void gzipUnpacksWhatCountsAsGzip() throws Exception {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
            out.write(BootFiles.named("kernel8.img", 8192));
        }
        byte[] otherMethod = packed.toByteArray();
        otherMethod[2] = 7;
        for (byte[] file : new byte[][] {packed.toByteArray(), BootFiles.gzippedKernel(9000), otherMethod}) {
            boolean theirs = ask(file, "gzip", "-t").isEmpty();
            assertThat(BootFileHead.kernel(file) == BootFileHead.Kernel.GZIP).isEqualTo(theirs);
        }
    }

    @Test
    void aHeadThatEndsBeforeItsMagicIsNoKernel() {
        byte[] image = BootFiles.named("kernel8.img", 512);
        assertThat(BootFileHead.kernel(Arrays.copyOf(image, 59))).isEqualTo(BootFileHead.Kernel.NONE);
        assertThat(BootFileHead.kernel(Arrays.copyOf(image, 60))).isEqualTo(BootFileHead.Kernel.IMAGE_64);
        assertThat(BootFileHead.kernel(new byte[0])).isEqualTo(BootFileHead.Kernel.NONE);
    }

    /** What a program says of a file, both streams; skips the test where it is not installed. */
    private String ask(byte[] content, String program, String option) throws IOException, InterruptedException {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin", program)), program + " is not installed: check skipped");
        Path file = Files.write(folder.resolve("asked.gz"), content);
        Process process = new ProcessBuilder("/usr/bin/" + program, option, file.toString())
                .redirectErrorStream(true)
                .start();
        process.getOutputStream().close();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
        return said;
    }
}
