package bootmend.cli.change;

import bootmend.cli.json.ChangeJson;
import bootmend.cli.option.CardArgument;
import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.Answer;
import bootmend.cli.text.LinePage;
import bootmend.cli.text.Screen;
import bootmend.operation.HistoryEntry;
import bootmend.operation.HistoryJob;
import bootmend.operation.HistoryView;
import bootmend.view.RecordedChange;
import bootmend.workplace.Workplace;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code bootmend history}: the changes made to a card from this computer. */
@Command(
        name = "history",
        header = "The changes made to a card from this computer.",
        mixinStandardHelpOptions = true,
        description =
                "Lists the changes made to this card from this computer, the newest first, with the lines that each "
                        + "changed. `bootmend undo --to N` goes back to any of them.",
        footer = {"", "Example:", "  bootmend history lab-07.img"})
public final class HistoryCommand implements Callable<Integer> {

    private static final DateTimeFormatter WHEN =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT).withZone(ZoneId.systemDefault());

    private final Workplace workplace;

    @Mixin
    private CardArgument card;

    @Spec
    private CommandSpec spec;

    /** The history as a JSON document. */
    record HistoryJson(String card, List<EntryJson> changes, List<RecordedChange> untold) {

        /** One change; {@code when} in ISO 8601. */
        record EntryJson(
                int number,
                String when,
                String title,
                List<ChangeJson.LineJson> lines,
                int sectors,
                boolean undone,
                String undoRecord) {

            static EntryJson of(HistoryEntry entry) {
                return new EntryJson(
                        entry.number(),
                        entry.when().toString(),
                        entry.title(),
                        entry.lines().stream().map(ChangeJson.LineJson::of).toList(),
                        entry.sectors(),
                        entry.undone(),
                        entry.undoRecord());
            }
        }
    }

    public HistoryCommand(Workplace workplace) {
        this.workplace = workplace;
    }

    @Override
    public Integer call() {
        Answer answer = new Answer(spec.commandLine(), card);
        return answer.of(() -> {
            HistoryView history = new HistoryJob(workplace).run(card.request());
            if (card.json()) {
                answer.json(new HistoryJson(
                        card.name(),
                        history.changes().stream()
                                .map(HistoryJson.EntryJson::of)
                                .toList(),
                        history.untold()));
            } else {
                print(answer.screen(), history);
            }
            return ExitCode.DONE;
        });
    }

    private void print(Screen screen, HistoryView history) {
        List<HistoryEntry> entries = history.changes();
        history.waiting().words().forEach(screen::line);
        if (entries.isEmpty() && history.untold().isEmpty()) {
            screen.line("No change to this card was made from this computer.");
        }
        for (HistoryEntry entry : entries) {
            screen.line(
                    "bold",
                    entry.number() + "  " + WHEN.format(entry.when()) + "  " + entry.title()
                            + (entry.undone() ? " (undone since)" : ""));
            new LinePage(screen).print(entry.files());
        }
        if (!history.untold().isEmpty()) {
            screen.line("It cannot be told whether "
                    + (history.untold().size() == 1 ? "this change was" : "these changes were")
                    + " made to this card or to another written from the same image:");
            history.untold().forEach(change -> screen.line("  " + change.words()));
        }
        if (!entries.isEmpty()) {
            screen.blank();
            screen.line("Back to how the card was after change N (0: before the first): bootmend undo --to N "
                    + card.name());
        }
    }
}
