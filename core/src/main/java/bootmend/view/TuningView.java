package bootmend.view;

import java.util.Optional;

/**
 * One line of a config file with a tuning key, as a user is shown it.
 *
 * @param file the config file or the included file it stands in
 * @param line counts from 1
 * @param section the section line above it with its brackets, or empty
 * @param unit of the value, such as {@code MHz}
 * @param stock what stock is, where that is published
 * @param active whether it counts; otherwise {@code state} says why not
 * @param state in words
 * @param resets whether going back to stock takes it out
 * @param effect what becomes of it on the board that was asked about; empty where none was, or the line is not read
 */
public record TuningView(
        String file,
        int line,
        String section,
        String key,
        String value,
        String unit,
        Optional<String> stock,
        boolean active,
        String state,
        boolean resets,
        Optional<LineEffectView> effect) {

    /** The same on a board: with the stock value there, and with what becomes of the line. */
    TuningView on(Optional<String> stockThere, Optional<LineEffectView> effectThere) {
        return new TuningView(file, line, section, key, value, unit, stockThere, active, state, resets, effectThere);
    }
}
