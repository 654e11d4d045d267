package bootmend.cli.text;

import bootmend.operation.LineChange;
import java.util.List;

/** Prints lines of a config file before and after a change, one under the other. */
public final class LinePage {

    private final Screen screen;

    public LinePage(Screen screen) {
        this.screen = screen;
    }

    public void print(List<LineChange> lines) {
        for (LineChange line : lines) {
            String place = line.file() + " line " + line.line();
            screen.line(place + "  before  " + line.before().orElse("(not there)"));
            screen.line(" ".repeat(place.length()) + "  after   " + line.after().orElse("(taken out)"));
        }
    }
}
