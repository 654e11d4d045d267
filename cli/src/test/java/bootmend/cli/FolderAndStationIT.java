package bootmend.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import bootmend.cli.outcome.ExitCode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Cards that are no image file, by whole commands on the packaged jar: a mounted folder, and a device at a station. */
class FolderAndStationIT {

    @TempDir
    private Path folder;

    @Test
    void resetsAMountedFolderAndTakesItBack() throws Exception {
        Bootmend bootmend = new Bootmend(folder);
        Path boot = Files.createDirectories(folder.resolve("boot"));
        Path config = Files.writeString(boot.resolve("config.txt"), TestCards.TUNED);

        assertThat(bootmend.run("show", boot).out())
                .contains("boot (mounted folder, ")
                .contains("boot partition  the mounted folder")
                .contains("2 active tuning lines");
        Bootmend.Result reset = bootmend.run("reset", "--yes", boot);
        assertThat(reset.code()).as(reset.err()).isZero();
        assertThat(reset.out())
                .contains("To write: config.txt; each as a new file beside the old")
                .contains("Every file was forced to the card and read back.")
                .contains("still mounted: eject it");
        assertThat(config).content().contains("#arm_freq=2100");
        Bootmend.Result repair = bootmend.run("repair", boot);
        assertThat(repair.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(repair.err()).contains("a mounted folder cannot be repaired");
        assertThat(bootmend.run("undo", "--yes", boot).code()).isZero();
        assertThat(config).hasContent(TestCards.TUNED);
    }

    @Test
    void aStationResetsADeviceThatItWasTold() throws Exception {
        assumeTrue(
                System.getProperty("os.name").startsWith("Linux"), "loop devices are Linux's: this check was skipped");
        assumeTrue(
                "root".equals(System.getProperty("user.name")),
                "attaching a loop device needs root: this check was skipped");
        Bootmend bootmend = new Bootmend(folder);
        Path card = TestCards.tuned(folder);
        String loop = losetup("--find", "--show", card.toString());
        try {
            Bootmend.Result result = bootmend.run("station", "--do", "reset", "--also", loop, "--cards", "1");

            assertThat(result.code()).as(result.err()).isZero();
            assertThat(result.out())
                    .contains("Card 1 in " + loop + ": done, take it out, next.")
                    .contains("Written, forced and read back: back to stock")
                    .contains("The station ended after 1 card.");
            assertThat(Files.readString(bootmend.home().resolve("station.log")))
                    .matches("(?s)[0-9TZ:-]+\t1\t" + loop + "\tdone\tWritten, .*\n");
        } finally {
            losetup("--detach", loop);
        }
        assertThat(bootmend.run("show", card).out()).contains("it is at stock");
    }

    private static String losetup(String... arguments) throws IOException, InterruptedException {
        String[] command = new String[arguments.length + 1];
        command[0] = "losetup";
        System.arraycopy(arguments, 0, command, 1, arguments.length);
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().merge("PATH", ":/usr/sbin:/sbin", String::concat);
        Process process = builder.start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        assertThat(process.waitFor()).as(said).isZero();
        return said;
    }
}
