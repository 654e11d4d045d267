package bootmend.tuning.resolve;

import bootmend.config.ReachedLine;
import bootmend.tuning.TuningKey;

/**
 * A line with a tuning key and what becomes of it on a board.
 *
 * @param source the line
 * @param key its key
 * @param value the value as the line has it; a line with parameters has one outcome for each that tunes
 * @param effect what becomes of it
 */
public record LineOutcome(ReachedLine source, TuningKey key, String value, LineEffect effect) {}
