package bootmend.view;

import java.util.Optional;

/**
 * One line of a config file as it stands there, as a user is shown it.
 *
 * @param number counts from 1
 * @param text safe to show
 * @param tuning what it tunes; empty where it has no tuning key
 */
public record SheetLine(int number, String text, Kind kind, Optional<TuningView> tuning) {

    /** What a line is to the board that reads it. */
    public enum Kind {
        BLANK,
        COMMENT,
        SECTION,
        SETTING,
        INCLUDE,
        OTHER
    }

    /** Whether going back to stock takes it out. */
    public boolean resets() {
        return tuning.filter(line -> line.active() && line.resets()).isPresent();
    }
}
