package bootmend.cli.option;

import bootmend.cli.report.ReportFormat;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What every command that takes many cards offers. */
public final class BatchOptions {

    private static final int MOST_JOBS = 64;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec spec;

    @Option(
            names = "--jobs",
            paramLabel = "N",
            description = "With several cards: how many to work on at once; by default one for each processor.")
    private Integer jobs;

    @Option(
            names = "--report",
            paramLabel = "FILE",
            description = "Write what was found and done, card by card, to a file; its name ends in .json, "
                    + ".csv or .html.")
    private Path report;

    public int jobs() {
        if (jobs == null) {
            return Math.min(MOST_JOBS, Runtime.getRuntime().availableProcessors());
        }
        if (jobs < 1 || jobs > MOST_JOBS) {
            throw new ParameterException(spec.commandLine(), "--jobs takes 1 to " + MOST_JOBS);
        }
        return jobs;
    }

    public Optional<Path> report() {
        if (report != null && ReportFormat.of(report).isEmpty()) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--report takes a file whose name ends in " + ".json, .csv or .html, not "
                            + report.toString().toLowerCase(Locale.ROOT));
        }
        return Optional.ofNullable(report);
    }
}
