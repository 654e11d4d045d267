package bootmend.device.system;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Programs that do not end, print without end, or leave others behind; each would hold up a careless reader for a minute. */
@Timeout(30)
class LimitedProgramsTest {

    private static final int MOST = 100_000;

    @TempDir
    private Path folder;

    private final Programs quick = new LimitedPrograms(Duration.ofMillis(300), MOST);
    private final Programs patient = new LimitedPrograms(Duration.ofSeconds(20), MOST);

    @BeforeEach
    void needsAShell() {
        assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "no /bin/sh here: skipped");
    }

    @Test
    void bothStreamsAndTheExitCodeAreTold() throws IOException {
        Programs.Result result = shell(patient, "echo said; echo complained >&2; exit 3");

        assertThat(result).isEqualTo(new Programs.Result(3, "said\n", "complained\n"));
        assertThat(result.said()).isEqualTo("complained");
    }

    @Test
    void aProgramThatDoesNotEndIsGivenUp() {
        assertThatThrownBy(() -> quick.run(List.of("sleep", "60")))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("sleep did not end within");
    }

    @Test
    void itsChildrenEndWithIt() throws Exception {
        Path pid = folder.resolve("pid");

        assertThatThrownBy(() -> shell(quick, "sleep 60 & echo $! >" + pid + "; wait"))
                .hasMessageContaining("did not end within");

        ProcessHandle.of(Long.parseLong(Files.readString(pid).strip()))
                .ifPresent(child -> assertThat(child.onExit().completeOnTimeout(null, 10, TimeUnit.SECONDS))
                        .succeedsWithin(Duration.ofSeconds(11))
                        .isNotNull());
    }

    @Test
    void endlessOutputIsReadAndDroppedUntilTheLimit() {
        assertThatThrownBy(() -> shell(quick, "yes")).hasMessageContaining("did not end within");
        assertThatThrownBy(() -> shell(quick, "yes >&2")).hasMessageContaining("did not end within");
    }

    @Test
    void noMoreThanTheBoundIsKeptOfEitherStream() throws IOException {
        Programs.Result result = shell(patient, "head -c 1000000 /dev/zero; head -c 1000000 /dev/zero >&2; echo end");

        assertThat(result.code()).isZero();
        assertThat(result.output()).hasSize(MOST);
        assertThat(result.errors()).hasSize(MOST);
    }

    @Test
    void whatAProgramLeavesRunningIsNotWaitedFor() throws IOException {
        assertThat(shell(patient, "sleep 25 & echo said").output()).isEqualTo("said\n");
    }

    @Test
    void aProgramThatWaitsForInputGetsNone() throws IOException {
        assertThat(shell(patient, "cat; echo over").output()).isEqualTo("over\n");
    }

    @Test
    void aProgramThatIsNotThereIsAnError() {
        assertThatThrownBy(() -> patient.run(List.of(folder.resolve("none").toString())))
                .isInstanceOf(IOException.class);
    }

    private static Programs.Result shell(Programs programs, String script) throws IOException {
        return programs.run(List.of("/bin/sh", "-c", script));
    }
}
