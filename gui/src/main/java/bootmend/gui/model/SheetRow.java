package bootmend.gui.model;

import bootmend.finding.Finding;
import bootmend.view.SheetLine;
import java.util.List;

/** One row of the sheet: the config file's text with what becomes of each line. */
public sealed interface SheetRow {

    /** A file's name, above its lines. */
    record File(String path) implements SheetRow {}

    /**
     * A line of a file.
     *
     * @param beside what becomes of it, to show beside it; empty where it tunes nothing
     * @param findings what a check says about it
     */
    record Line(String file, SheetLine line, String beside, Tone tone, List<Finding> findings) implements SheetRow {

        public Line {
            findings = List.copyOf(findings);
        }
    }

    /** How many more lines a file has. */
    record Rest(int lines) implements SheetRow {}

    /** How a line stands out. */
    enum Tone {
        /** It tunes nothing. */
        PLAIN,
        /** Nobody reads it: a comment. */
        QUIET,
        /** It tunes the board, and going back to stock takes it out. */
        COUNTS,
        /** It tunes the board, or may, and stays. */
        MAY_COUNT,
        /** It has a tuning key but does nothing. */
        IDLE
    }
}
