package bootmend.cli;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.workplace.Workplace;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

/** A command that is put together alone is the one that stands among all. */
class CommandLinesTest {

    @TempDir
    Path home;

    private final PrintWriter nowhere = new PrintWriter(new StringWriter());

    @Test
    void everyCommandHasTheNameItIsAskedForBy() {
        all().getSubcommands()
                .forEach((name, command) -> assertThat(alone(name).getSubcommands())
                        .containsOnlyKeys(
                                // Help is about the others and has them all.
                                name.equals("help") ? all().getSubcommands().keySet() : Set.of(name)));
    }

    @Test
    void theHelpOfACommandIsTheSameAloneAndAmongAll() {
        all().getSubcommands().forEach((name, command) -> {
            CommandLine one = alone(name).getSubcommands().get(name);
            assertThat(one.getUsageMessage()).isEqualTo(command.getUsageMessage());
            command.getSubcommands()
                    .forEach((inner, line) -> assertThat(
                                    one.getSubcommands().get(inner).getUsageMessage())
                            .isEqualTo(line.getUsageMessage()));
        });
    }

    @Test
    void whatNamesNoCommandGetsThemAll() {
        for (String[] arguments : new String[][] {{}, {"--help"}, {"sho"}, {"-x", "show"}, {""}}) {
            assertThat(CommandLines.createFor(arguments, Workplace.ofThisComputer(home), null, nowhere, nowhere)
                            .getSubcommands()
                            .keySet())
                    .isEqualTo(all().getSubcommands().keySet());
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"add", "list", "import", "advise", "chart", "logger"})
    void everyTrialCommandHasAnExampleInItsHelp(String command) {
        assertThat(all().getSubcommands()
                        .get("trial")
                        .getSubcommands()
                        .get(command)
                        .getUsageMessage())
                .contains("Example", "bootmend trial " + command, "--json");
    }

    private CommandLine all() {
        return CommandLines.create(Workplace.ofThisComputer(home), null, nowhere, nowhere);
    }

    private CommandLine alone(String name) {
        return CommandLines.createFor(new String[] {name}, Workplace.ofThisComputer(home), null, nowhere, nowhere);
    }
}
