package bootmend.tuning.resolve;

import bootmend.config.Condition;
import bootmend.config.ReachedLine;
import bootmend.config.Truth;

/**
 * A value that a line gives, or may give, to a key.
 *
 * @param setBy the key on the line: the key itself, or one that sets several
 * @param written the value as the line has it
 * @param value the value as the board takes it, such as a clamped one; else as written
 * @param condition whether it counts; never false
 * @param source the line
 */
public record Candidate(String setBy, String written, String value, Condition condition, ReachedLine source) {

    public String file() {
        return source.file();
    }

    /** Line number in its file, counted from 1. */
    public int line() {
        return source.line().number();
    }

    boolean isSure() {
        return condition.truth() == Truth.TRUE;
    }

    /** The same under one more condition; itself where that adds nothing, for a line may be a candidate of many keys. */
    Candidate under(Condition more) {
        Condition both = condition.and(more);
        return both.equals(condition) ? this : new Candidate(setBy, written, value, both, source);
    }

    Candidate withValue(String newValue) {
        return new Candidate(setBy, written, newValue, condition, source);
    }
}
