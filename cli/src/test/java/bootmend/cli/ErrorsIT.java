package bootmend.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import bootmend.cli.outcome.ExitCode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every error of the main job, by whole commands: its own words, what to do next, its exit code, no stack trace. */
class ErrorsIT {

    @TempDir
    private Path folder;

    private Bootmend bootmend;

    @BeforeEach
    void prepare() {
        bootmend = new Bootmend(folder);
    }

    @Test
    void aMissingFile() throws Exception {
        expect(
                bootmend.run("show", folder.resolve("nowhere.img")),
                ExitCode.UNREADABLE,
                "there is no such file or device");
    }

    /** The device of that name has no room, ever. */
    @Test
    void anAnswerThatCannotBeWritten() throws Exception {
        Path full = Path.of("/dev/full");
        assumeTrue(Files.exists(full), "no /dev/full here: skipped");
        Path card = TestCards.tuned(folder);
        byte[] before = Files.readAllBytes(card);
        for (List<Object> command : List.<List<Object>>of(
                List.of("show", "--json", card),
                List.of("check", "--for", "ship", "--json", card, card),
                List.of("show", "--help"))) {
            Bootmend.Result result = bootmend.runInto(full, command.toArray());
            assertThat(result.code()).as("%s", command).isEqualTo(ExitCode.UNREADABLE);
            assertThat(result.err()).as("%s", command).contains("the answer could not be written");
        }
        assertThat(bootmend.runInto(full, "reset", "--yes", card).err())
                .contains("the change could not be shown, so it was not made");
        assertThat(Files.readAllBytes(card)).isEqualTo(before);
    }

    @Test
    void anEmptyFile() throws Exception {
        Path file = Files.createFile(folder.resolve("empty.img"));
        expect(bootmend.run("show", file), ExitCode.UNREADABLE, "it is empty");
    }

    @Test
    void aFolder() throws Exception {
        expect(bootmend.run("show", folder), ExitCode.UNREADABLE, "it is a folder");
    }

    @Test
    void aFileThatIsNoCard() throws Exception {
        Path file = Files.writeString(folder.resolve("poem.txt"), "no card ".repeat(1000));
        expect(bootmend.run("show", file), ExitCode.UNREADABLE, "no partition table and no FAT volume");
    }

    @Test
    void aCardWithoutFatPartition() throws Exception {
        byte[] sector = new byte[1 << 20];
        sector[446 + 4] = (byte) 0x83;
        sector[446 + 9] = 1;
        sector[446 + 13] = 2;
        sector[510] = 0x55;
        sector[511] = (byte) 0xAA;
        Path file = Files.write(folder.resolve("other.img"), sector);
        expect(
                bootmend.run("show", file),
                ExitCode.UNREADABLE,
                "no FAT partition that can be read (found: partition 1 (type 0x83))");
    }

    @Test
    void aBootPartitionWithoutConfigFile() throws Exception {
        Bootmend.Result result = bootmend.run("show", TestCards.withoutConfig(folder));
        expect(result, ExitCode.UNREADABLE, "the boot partition has no config.txt");
        assertThat(result.out()).contains("FAT16");
    }

    @Test
    void aConfigFileOverOneMebibyte() throws Exception {
        Path card = TestCards.with(folder, "big.img", new byte[(1 << 20) + 1]);
        expect(bootmend.run("reset", "--yes", card), ExitCode.UNREADABLE, "config.txt has 1048577 bytes");
    }

    @Test
    void aCardThatAnotherProcessIsChanging() throws Exception {
        Path card = TestCards.tuned(folder);
        try (FileChannel channel = FileChannel.open(card, StandardOpenOption.WRITE);
                var lock = channel.lock()) {
            assertThat(lock.isValid()).isTrue();
            expect(bootmend.run("reset", "--yes", card), ExitCode.REFUSED, "another bootmend is changing it");
        }
    }

    @Test
    void noTerminalToAskOn() throws Exception {
        Path card = TestCards.tuned(folder);
        byte[] before = Files.readAllBytes(card);
        expect(bootmend.run("reset", card), ExitCode.REFUSED, "no terminal to ask on");
        assertThat(Files.readAllBytes(card)).isEqualTo(before);
    }

    @Test
    void nothingToUndo() throws Exception {
        expect(bootmend.run("undo", "--yes", TestCards.tuned(folder)), ExitCode.REFUSED, "no change to this card");
    }

    @Test
    void aPartitionThatIsNotThere() throws Exception {
        expect(
                bootmend.run("show", "--partition", "7", TestCards.tuned(folder)),
                ExitCode.USAGE,
                "this card has no partition 7");
    }

    @Test
    void aKeyThatTunesNothing() throws Exception {
        expect(
                bootmend.run("reset", "--also", "dtparam", TestCards.tuned(folder)),
                ExitCode.USAGE,
                "dtparam is no tuning key");
    }

    @Test
    void wrongUsage() throws Exception {
        assertThat(bootmend.run().code()).isEqualTo(ExitCode.USAGE);
        assertThat(bootmend.run("show").code()).isEqualTo(ExitCode.USAGE);
        assertThat(bootmend.run("shove", "x").code()).isEqualTo(ExitCode.USAGE);
    }

    @Test
    void anErrorAsJson() throws Exception {
        Bootmend.Result result = bootmend.run("show", "--json", folder.resolve("nowhere.img"));
        assertThat(new ObjectMapper()
                        .readTree(result.out())
                        .at("/error/exitCode")
                        .asInt())
                .isEqualTo(ExitCode.UNREADABLE);
    }

    @Test
    void controlCharactersFromACardAreMadeVisible() throws Exception {
        String config = "over_voltage=2\u001b[2J\u0007\narm_freq=1\u202e99\n";
        Path card = TestCards.with(folder, "evil.img", config.getBytes(StandardCharsets.UTF_8));
        String out = bootmend.run("show", card).out();
        assertThat(out).contains("2\\x1B[2J\\x07").contains("\\u{202E}").doesNotContain("\u001b", "\u202e", "\u0007");
    }

    private static void expect(Bootmend.Result result, int code, String words) {
        assertThat(result.code()).isEqualTo(code);
        assertThat(result.err()).startsWith("bootmend: ").contains(words).doesNotContain("Exception", "\tat ");
        assertThat(result.err().strip().lines()).hasSize(1);
    }
}
