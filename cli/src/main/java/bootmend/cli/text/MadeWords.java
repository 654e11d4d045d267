package bootmend.cli.text;

import bootmend.operation.Made;
import java.util.ArrayList;
import java.util.List;

/**
 * What is said of a change that was made, and what may be done with the card now.
 *
 * @param done what it was, such as {@code back to stock}
 */
public record MadeWords(String done) implements Made.Cases<List<String>> {

    private static final String MOVED =
            "Another file or card took its name meanwhile: what was changed is the one that was "
                    + "opened, which that name leads to no more.";

    @Override
    public List<String> onCard(Made.OnCard made) {
        List<String> lines = new ArrayList<>(List.of(
                "Done: " + done + ". Every sector was synced to the card and read back"
                        + (made.secondReader() ? ", and a second reader found the file as planned." : "."),
                "Undo record: " + made.record()));
        lines.add(made.nameKept() ? "The card is safe to take out." : MOVED);
        return lines;
    }

    @Override
    public List<String> inFolder(Made.InFolder made) {
        return List.of(
                "Done: " + done + ". Every file was written and read back.",
                "Undo record: " + made.record(),
                made.nameKept() ? "The card is still mounted: eject it in the system before you take it out." : MOVED);
    }

    @Override
    public List<String> inFile(Made.InFile made) {
        return List.of(
                "Done: " + done + ". " + made.file() + " was replaced in one step, synced and read back.",
                "No undo record is kept of a file that is on no card.");
    }

    @Override
    public List<String> closed(Made.Closed made) {
        return List.of(
                "Nothing of the change stood on this card, so nothing was written; its record is put away.",
                "Undo record: " + made.record());
    }

    /** Prints them, the first in bold. */
    public void print(Screen screen, Made made) {
        List<String> lines = made.match(this);
        screen.line("bold", lines.get(0));
        lines.subList(1, lines.size()).forEach(screen::line);
    }
}
