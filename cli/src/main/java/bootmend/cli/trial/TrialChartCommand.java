package bootmend.cli.trial;

import bootmend.CardException;
import bootmend.chart.Drawing;
import bootmend.chart.SvgPicture;
import bootmend.chart.TrialChart;
import bootmend.cli.chart.PngPicture;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.page.Amount;
import bootmend.record.ChartView;
import bootmend.record.TrialAdviseJob;
import bootmend.record.TrialReport;
import bootmend.record.TrialSide;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.Optional;
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
        description =
                "Draws a board's trials: clock against voltage with what held and what failed, the frontier between "
                        + "them, the chance of holding as shades, the next trial and those behind it, and peak temperatures with the "
                        + "80 and 85 degC lines. Another board, or the same one under another cooling, can be drawn beside it.",
        footer = {
            "",
            "Examples:",
            "  bootmend trial chart --label lab-07 --out lab-07.svg",
            "  bootmend trial chart --label lab-07 --with lab-08 --out both.svg",
            "  bootmend trial chart --label lab-07 --cooling fan \\",
            "      --with-cooling \"heat sink\" --out cooling.svg"
        })
final class TrialChartCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Option(
            names = {"--label", "--board"},
            paramLabel = "LABEL",
            required = true,
            description = "The label that the board's trials were given.")
    private String label;

    @Option(names = "--cooling", paramLabel = "TEXT", description = "Only its trials under this cooling.")
    private String cooling;

    @Option(names = "--with", paramLabel = "LABEL", description = "Another board to draw beside it.")
    private String with;

    @Option(
            names = "--with-cooling",
            paramLabel = "TEXT",
            description = "Draw beside it what was tried under this cooling.")
    private String withCooling;

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
            TrialReport report = new TrialAdviseJob(workplace)
                    .run(new TrialSide(label, Optional.ofNullable(cooling)), OptionalDouble.empty());
            if (report.trials().isEmpty()) {
                throw CardException.usage(
                        "no trial of " + label + " has a known clock and voltage step",
                        String.join(" ", report.notes()));
            }
            write(picture(format, report, view(report)));
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

    private ChartView view(TrialReport report) throws CardException {
        if (with == null && withCooling == null) {
            return ChartView.of(report);
        }
        TrialSide side = new TrialSide(with == null ? label : with, Optional.ofNullable(withCooling));
        return ChartView.compared(
                report, new TrialAdviseJob(workplace).run(side, OptionalDouble.empty()), side.words());
    }

    private static byte[] picture(String format, TrialReport report, ChartView view) throws CardException {
        Drawing drawing = new TrialChart(view, report.advice()).picture();
        return format.equals("png")
                ? PngPicture.of(drawing)
                : SvgPicture.of(drawing).getBytes(StandardCharsets.UTF_8);
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
