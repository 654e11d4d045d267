package bootmend.cli;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.cli.outcome.ExitCode;
import bootmend.workplace.Workplace;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

/** What a mistyped command is answered with: its sentence, the nearest word, where help is, and nothing after that. */
class UsageErrorsTest {

    @TempDir
    private Path home;

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @ParameterizedTest
    @CsvSource({
        "fix a.img, repair or diagnose",
        "restore a.img, undo or reset",
        "resett a.img, reset",
        "shwo a.img, show",
        "show --bord pi4 a.img, --board",
        "reset --dryrun a.img, --dry-run",
        "trial ad, add",
    })
    void theNearestWordIsNamed(String line, String near) {
        assertThat(run(line)).isEqualTo(ExitCode.USAGE);
        assertThat(err.toString()).contains("Did you mean " + near).endsWith(" --help`.\n");
        assertThat(err.toString().lines()).hasSize(3);
        assertThat(out.toString()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"qqqqqqqq a.img", "show", "history a.img b.img", "show --color=sometimes a.img"})
    void whatIsNearToNothingIsOnlyTold(String line) {
        assertThat(run(line)).isEqualTo(ExitCode.USAGE);
        assertThat(err.toString()).doesNotContain("Did you mean");
        assertThat(err.toString().lines()).hasSize(2);
    }

    @Test
    void helpIsACommandToo() {
        assertThat(run("help reset")).isZero();
        assertThat(out.toString()).contains("Usage: bootmend reset");
    }

    @ParameterizedTest
    @CsvSource({"always, true", "never, false"})
    void coloursAreAsAskedFor(String when, boolean coloured) {
        run("explain --color " + when + " over_voltage");
        assertThat(out.toString().contains("\u001B[")).isEqualTo(coloured);
    }

    private int run(String arguments) {
        String[] words = arguments.split(" ");
        CommandLine line = CommandLines.createFor(
                words, Workplace.ofThisComputer(home), null, new PrintWriter(out, true), new PrintWriter(err, true));
        return line.execute(words);
    }
}
