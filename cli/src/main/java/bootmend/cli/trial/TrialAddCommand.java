package bootmend.cli.trial;

import bootmend.cli.json.TrialJson;
import bootmend.cli.option.BoardOptions;
import bootmend.cli.option.TrialMeasuredOptions;
import bootmend.cli.run.Answer;
import bootmend.cli.text.TrialPage;
import bootmend.record.TrialAddJob;
import bootmend.record.TrialRequest;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code bootmend trial add}: keeps a trial. */
@Command(
        name = "add",
        header = "Keeps a trial.",
        mixinStandardHelpOptions = true,
        description =
                "Keeps a trial: which board, which settings, how it ended and what was measured. The settings come "
                        + "from --set, from a card, or both; a key that is named nowhere was at stock. With --tryboot the card's "
                        + "staged file is read, for that is what ran. A log is held against what it is said to prove.",
        footer = {
            "",
            "Examples:",
            "  bootmend trial add --label lab-07 --board pi4 --set arm_freq=2000 \\",
            "      --set over_voltage=4 --outcome holds --full-load --minutes 50 \\",
            "      --peak 71 --mask 0x0 --ambient 22 --cooling fan",
            "  bootmend trial add --label lab-07 --board pi4 --card lab-07.img \\",
            "      --outcome holds --full-load --from log.csv"
        })
final class TrialAddCommand implements Callable<Integer> {

    private final Workplace workplace;

    @Option(
            names = "--label",
            paramLabel = "LABEL",
            required = true,
            description = "Your own name of this one physical board, such as lab-07.")
    private String label;

    @Mixin
    private BoardOptions board;

    @Option(
            names = "--card",
            paramLabel = "CARD",
            description = "Take the settings from this card: an image file or a block device. It is only read.")
    private Path card;

    @Option(names = "--partition", paramLabel = "N", description = "The card's boot partition, counted from 1.")
    private Integer partition;

    @Option(
            names = "--set",
            paramLabel = "KEY=NUMBER",
            description =
                    "A setting that was in force, such as arm_freq=2000; goes before the card's. May be given several "
                            + "times.")
    private List<String> settings = new ArrayList<>();

    @Option(
            names = "--outcome",
            paramLabel = "WORD",
            required = true,
            description = "How it ended: boots, no-boot, locks-up, misbehaves, throttles or holds.")
    private String outcome;

    @Option(
            names = "--from",
            paramLabel = "LOG",
            description = "Take minutes, peak, clock and mask from a board's log (CSV), where they are not given.")
    private Path log;

    @ArgGroup(exclusive = false, validate = false, heading = "What was measured:%n")
    private final TrialMeasuredOptions measured = new TrialMeasuredOptions();

    @Option(
            names = "--when",
            paramLabel = "TIME",
            description = "When it ended, such as 2026-11-24T15:30:00Z (default: now).")
    private String when;

    @Option(names = "--notes", paramLabel = "TEXT", defaultValue = "", description = "More to know.")
    private String notes;

    @Option(
            names = "--note",
            arity = "0..1",
            fallbackValue = "",
            paramLabel = "TEXT",
            description = "Keep the trial although its log contradicts it, undecided, with this note.")
    private String note;

    @Option(names = "--json", description = "Answer with one JSON document on standard output.")
    private boolean json;

    @Spec
    private CommandSpec spec;

    TrialAddCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        return new Answer(spec.commandLine(), json)
                .of(
                        () -> new TrialAddJob(workplace).run(request()),
                        TrialJson.AddedJson::of,
                        (screen, added) -> new TrialPage(screen).added(added));
    }

    private TrialRequest request() {
        Optional<CardRequest> from = Optional.ofNullable(card)
                .map(path ->
                        new CardRequest(path, partition == null ? OptionalInt.empty() : OptionalInt.of(partition)));
        return new TrialRequest(
                label,
                board.request(),
                from,
                settings,
                Optional.ofNullable(log),
                outcome,
                measured.measured(),
                measured.cooling(),
                measured.supply(),
                measured.ambient(),
                Optional.ofNullable(when),
                note == null || note.isEmpty() ? notes : (notes + " " + note).strip(),
                note != null);
    }
}
