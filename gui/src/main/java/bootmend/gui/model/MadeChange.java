package bootmend.gui.model;

import bootmend.gui.text.Words;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.operation.HistoryEntry;
import bootmend.operation.LineChange;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A change that was made to the card, as it is listed.
 *
 * @param when local time
 * @param lines what it did to lines of files, at most {@value #MOST_LINES} of them and how many more there are; not yet
 *     safe to show
 * @param size how much it wrote
 */
public record MadeChange(
        int number, String when, String title, List<String> lines, String size, boolean undone, String undoRecord) {

    private static final int MOST_LINES = 12;

    public MadeChange {
        lines = List.copyOf(lines);
    }

    /** @param zone the time zone that the time is given in */
    public static MadeChange of(HistoryEntry entry, ZoneId zone, Words words) {
        DateTimeFormatter format =
                DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT).withZone(zone);
        return new MadeChange(
                entry.number(),
                format.format(entry.when()),
                entry.title(),
                lines(entry.lines(), words),
                entry.sectors() == 0 ? words.of("changes.files") : words.of("changes.sectors", entry.sectors()),
                entry.undone(),
                entry.undoRecord());
    }

    private static List<String> lines(List<LineChange> lines, Words words) {
        List<String> shown = new ArrayList<>(
                lines.stream().limit(MOST_LINES).map(line -> line(line, words)).toList());
        if (lines.size() > MOST_LINES) {
            shown.add(words.of("changes.morelines", lines.size() - MOST_LINES));
        }
        return shown;
    }

    private static String line(LineChange line, Words words) {
        return words.of(
                "changes.line",
                line.file(),
                line.line(),
                line.before().orElse(words.of("changes.new")),
                line.after().orElse(words.of("strip.takenout")));
    }

    /** The card as it was after this change. */
    public ChangeOrder goBack() {
        return to(number);
    }

    /** The card as it was before the first change that is listed. */
    public static ChangeOrder beforeTheFirst() {
        return to(0);
    }

    private static ChangeOrder to(int number) {
        return ChangeOrder.of(ChangeRequest.Undo.to(number));
    }
}
