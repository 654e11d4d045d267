package bootmend.device;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import bootmend.CardException;
import java.io.IOException;
import java.net.StandardProtocolFamily;
import java.net.UnixDomainSocketAddress;
import java.nio.channels.ServerSocketChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a user can name by accident. */
@Timeout(20)
class FileTypeTest {

    @TempDir
    private Path folder;

    @BeforeEach
    void needsASystemWithSuchFiles() {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/mkfifo")), "no mkfifo here: skipped");
    }

    @Test
    void eachTypeAndALinkToIt() throws Exception {
        Path file = Files.write(folder.resolve("card.img"), new byte[512]);
        assertType(file, FileType.FILE);
        assertType(folder, FileType.FOLDER);
        assertType(folder.resolve("none"), FileType.MISSING);
        assertType(pipe(), FileType.PIPE);
        assertType(Path.of("/dev/zero"), FileType.CHARACTER_DEVICE);
        assertType(Path.of("/dev/tty"), FileType.CHARACTER_DEVICE);
        Path socket = folder.resolve("socket");
        try (ServerSocketChannel server = ServerSocketChannel.open(StandardProtocolFamily.UNIX)) {
            server.bind(UnixDomainSocketAddress.of(socket));
            assertType(socket, FileType.SOCKET);
        }
    }

    @Test
    void aLinkInACircleAndThroughAFile() throws IOException {
        Path circle = Files.createSymbolicLink(folder.resolve("circle"), folder.resolve("circle"));
        Path file = Files.createFile(folder.resolve("file"));

        assertThat(FileType.of(circle)).isEqualTo(FileType.OTHER);
        assertThat(FileType.of(file.resolve("below"))).isEqualTo(FileType.MISSING);
    }

    @Test
    void nothingIsNotTheCurrentFolder() {
        assertThat(Files.isDirectory(Path.of(""))).as("what Java makes of it").isTrue();
        assertThat(FileType.of(Path.of(""))).isEqualTo(FileType.MISSING);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "\t"})
    void anEmptyNameIsRefused(String text) {
        assertThatThrownBy(() -> CardName.of(text)).isInstanceOfSatisfying(CardException.class, e -> {
            assertThat(e.kind()).isEqualTo(CardException.Kind.USAGE);
            assertThat(e).hasMessageContaining("empty");
        });
    }

    @Test
    void aNameIsAnImageAFolderOrRefused() throws Exception {
        Path file = Files.write(folder.resolve("card.img"), new byte[512]);

        assertThat(CardName.of(file.toString())).isEqualTo(new CardName.FileName(file));
        assertThat(CardName.of(folder.toString())).isEqualTo(new CardName.FolderName(folder));
        assertThatThrownBy(() -> CardName.of(pipe().toString())).hasMessageContaining("it is a named pipe");
        assertThatThrownBy(() -> CardName.of("/dev/zero")).hasMessageContaining("it is a character device");
        assertThatThrownBy(() -> CardName.of(folder.resolve("none").toString())).hasMessageContaining("no such file");
        assertThatThrownBy(() -> CardName.of("a\0b")).isInstanceOf(CardException.class);
    }

    /** Source: "Naming Files, Paths, and Namespaces" of the Windows documentation; value from memory. */
    @ParameterizedTest
    @CsvSource({
        "\\\\.\\PHYSICALDRIVE1, \\\\.\\PHYSICALDRIVE1",
        "\\\\.\\PhysicalDrive12\\, \\\\.\\PHYSICALDRIVE12",
        "//./physicaldrive1, \\\\.\\PHYSICALDRIVE1",
        "\\\\.\\e:, \\\\.\\E:",
        "\\\\?\\Volume{0B0E1A2C-0000-0000-0000-100000000000}\\, \\\\?\\Volume{0b0e1a2c-0000-0000-0000-100000000000}"
    })
    void namesOfDevicesOnWindows(String said, String device) throws CardException {
        assertThat(CardName.of(said, true)).isEqualTo(new CardName.DeviceName(device));
        assertThat(CardName.of(said, true).absolute()).isEqualTo(device);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"E:\\card.img", "card.img", "\\\\server\\share\\card.img", "\\\\.\\pipe\\card", "PHYSICALDRIVE1"
            })
    void namesOfNoDeviceOnWindows(String said) {
        assertThat(WindowsNames.device(said)).isEmpty();
        assertThat(WindowsNames.isReserved(said)).isFalse();
    }

    @Test
    void drivesAndReservedNamesOfWindows() {
        assertThat(WindowsNames.drive("e:")).isEqualTo(Optional.of("E:\\"));
        assertThat(WindowsNames.drive("e:card.img")).isEmpty();
        for (String name : new String[] {"CON", "nul", "C:\\lab\\aux.img", "com1", "LPT9.txt"}) {
            assertThatThrownBy(() -> CardName.of(name, true)).hasMessageContaining("character device");
        }
        assertThat(WindowsNames.isReserved("console.img")).isFalse();
    }

    private void assertType(Path path, FileType type) throws IOException {
        assertThat(FileType.of(path)).isEqualTo(type);
        Path link = Files.createSymbolicLink(folder.resolve("to-" + type + path.getFileName()), path);
        assertThat(FileType.of(link)).as("a link to it").isEqualTo(type);
    }

    private Path pipe() throws Exception {
        Path pipe = folder.resolve("pipe");
        if (!Files.exists(pipe)) {
            assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor())
                    .isZero();
        }
        return pipe;
    }
}
