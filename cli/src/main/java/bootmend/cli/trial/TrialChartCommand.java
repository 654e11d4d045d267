package bootmend.cli.trial;

import bootmend.CardException;
import bootmend.cli.chart.ChartFile;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.page.Amount;
import bootmend.record.ChartView;
import bootmend.record.TrialAdviseJob;
import bootmend.record.TrialReport;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code bootmend trial chart}: a picture of a board's trials. */
@Command(
        name = "chart",
        header = "A picture of a board's trials.",
        mixinStandardHelpOptions = true,
        description = "Draws a board's trials: clock against voltage step with what held and what failed, the frontier "
                + "between them, and peak temperatures with the 80 and 85 degC lines.",
        footer = {"", "Example:", "  bootmend trial chart --label lab-07 --out lab-07.svg"})
final class TrialChartCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Option(
            names = {"--label", "--board"},
            paramLabel = "LABEL",
            required = true,
            description = "The label that the board's trials were given.")
    private String label;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            required = true,
            description = "The picture to write; its name ends in .svg or .png.")
    private Path file;

    @Option(names = "--replace", description = "Write over the file where it is there already.")
    private boolean replace;

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    @Spec
    private CommandSpec spec;

    /** The answer as a JSON document. */
    record ChartJson(String label, String file, String format, int trials) {}

    TrialChartCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        Answer answer = new Answer(spec.commandLine(), json);
        return answer.of(() -> {
            String format = format();
            TrialReport report = new TrialAdviseJob(workplace).run(label, OptionalDouble.empty());
            if (report.trials().isEmpty()) {
                throw CardException.usage(
                        "no trial of " + label + " has a known clock and voltage step",
                        String.join(" ", report.notes()));
            }
            write(picture(format, ChartView.of(report)));
            if (json) {
                answer.json(new ChartJson(
                        report.unit().label(),
                        file.toString(),
                        format,
                        report.trials().size()));
            } else {
                answer.screen()
                        .line("Drawn: " + file + ", "
                                + Amount.count(report.trials().size(), "trial") + ".");
                report.notes().forEach(answer.screen()::line);
            }
            return ExitCode.DONE;
        });
    }

    private String format() throws CardException {
        String name = file.toString().toLowerCase(Locale.ROOT);
        if (name.endsWith(".svg") || name.endsWith(".png")) {
            return name.substring(name.length() - "svg".length());
        }
        throw CardException.usage(
                file + " does not end in .svg or .png", "Name the picture so, for example chart.svg.");
    }

    private static byte[] picture(String format, ChartView view) throws CardException {
        // A picture file needs no screen; without this, some systems would open an application's window for it.
        System.setProperty("java.awt.headless", "true");
        return ChartFile.valueOf(format.toUpperCase(Locale.ROOT)).of(view);
    }

    private void write(byte[] picture) throws CardException {
        OpenOption[] how = replace
                ? new OpenOption[] {
                    StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING, StandardOpenOption.WRITE
                }
                : new OpenOption[] {StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE};
        try {
            Files.write(file, picture, how);
        } catch (FileAlreadyExistsException e) {
            throw CardException.refused(
                    file + " is there already and was left alone", "Name another file, or add --replace.");
        } catch (IOException e) {
            throw CardException.refused(
                    file + " could not be written (" + e.getMessage() + ")",
                    "Name a file in a folder that you may write to.",
                    e);
        }
    }
}
