package bootmend.cli.text;

import bootmend.operation.Made;
import java.util.List;

/**
 * What is said of a change that was made, and what may be done with the card now.
 *
 * @param done what it was, such as {@code back to stock}
 */
public record MadeWords(String done) implements Made.Cases<List<String>> {

    @Override
    public List<String> onCard(Made.OnCard made) {
        return List.of(
                "Done: " + done + ". Every sector was synced to the card and read back"
                        + (made.secondReader() ? ", and a second reader found the file as planned." : "."),
                "Undo record: " + made.record(),
                "The card is safe to take out.");
    }

    @Override
    public List<String> inFolder(Made.InFolder made) {
        return List.of(
                "Done: " + done + ". Every file was written and read back.",
                "Undo record: " + made.record(),
                "The card is still mounted: eject it in the system before you take it out.");
    }

    /** Prints them, the first in bold. */
    public void print(Screen screen, Made made) {
        List<String> lines = made.match(this);
        screen.line("bold", lines.get(0));
        lines.subList(1, lines.size()).forEach(screen::line);
    }
}
