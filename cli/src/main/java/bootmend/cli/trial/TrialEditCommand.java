package bootmend.cli.trial;

import bootmend.cli.json.TrialJson;
import bootmend.cli.option.Given;
import bootmend.cli.run.Answer;
import bootmend.cli.text.TrialPage;
import bootmend.record.TrialEdit;
import bootmend.record.TrialEditJob;
import bootmend.workplace.Workplace;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code bootmend trial edit}: a trial corrected. */
@Command(
        name = "edit",
        header = "A trial corrected.",
        mixinStandardHelpOptions = true,
        description =
                "Corrects a trial that is kept; what is not named stays as it is. With --from it is held against the "
                        + "board's log again. The id is one that `bootmend trial list` shows.",
        footer = {"", "Example:", "  bootmend trial edit 9f27a1c4 --minutes 50 \\", "      --set over_voltage=5"})
final class TrialEditCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Parameters(paramLabel = "ID", description = "The trial's id.")
    private String id;

    @Option(
            names = "--set",
            paramLabel = "KEY=NUMBER",
            description =
                    "A setting that was in force; KEY= alone for one that was at stock. May be given several times.")
    private List<String> settings = new ArrayList<>();

    @Option(
            names = "--outcome",
            paramLabel = "WORD",
            description = "How it ended: boots, no-boot, locks-up, misbehaves, throttles or holds.")
    private String outcome;

    @Option(names = "--minutes", paramLabel = "N", description = "How long it ran at the set clock.")
    private Double minutes;

    @Option(
            names = "--full-load",
            negatable = true,
            description = "Whether every processor core was kept busy all that time.")
    private Boolean fullLoad;

    @Option(names = "--peak", paramLabel = "DEGC", description = "Highest temperature, in degC.")
    private Double peak;

    @Option(names = "--clock", paramLabel = "MHZ", description = "Clock under load, in MHz.")
    private Double clock;

    @Option(names = "--mask", paramLabel = "MASK", description = "The board's throttle report at the end, such as 0x0.")
    private String mask;

    @Option(
            names = "--score",
            paramLabel = "NAME=NUMBER",
            description = "A result, higher is better. May be given several times.")
    private List<String> scores = new ArrayList<>();

    @Option(names = "--cooling", paramLabel = "TEXT", description = "What cooled the board.")
    private String cooling;

    @Option(names = "--supply", paramLabel = "TEXT", description = "What fed the board.")
    private String supply;

    @Option(names = "--ambient", paramLabel = "DEGC", description = "Temperature of the air, in degC.")
    private Double ambient;

    @Option(names = "--notes", paramLabel = "TEXT", description = "More to know, in the place of its notes.")
    private String notes;

    @Option(names = "--from", paramLabel = "LOG", description = "The board's log (CSV), for what is not given here.")
    private Path log;

    @Option(names = "--note", description = "Keep it although that log contradicts it, undecided.")
    private boolean despite;

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    @Spec
    private CommandSpec spec;

    TrialEditCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        return new Answer(spec.commandLine(), json)
                .of(
                        () -> new TrialEditJob(workplace).edit(id, edit()),
                        TrialJson.AddedJson::of,
                        (screen, edited) -> new TrialPage(screen).edited(edited));
    }

    private TrialEdit edit() {
        return new TrialEdit(
                settings,
                Optional.ofNullable(outcome),
                Given.number(minutes),
                Optional.ofNullable(fullLoad),
                Given.number(peak),
                Given.number(clock),
                Optional.ofNullable(mask),
                scores,
                Optional.ofNullable(cooling),
                Optional.ofNullable(supply),
                Given.number(ambient),
                Optional.ofNullable(notes),
                Optional.ofNullable(log),
                despite);
    }
}
