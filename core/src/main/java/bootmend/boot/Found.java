package bootmend.boot;

import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * One thing that a link rests on.
 *
 * @param what a path on the boot partition or words such as {@code partition 2}; not yet safe to show
 * @param line a line of that file, counted from 1, where one is meant
 * @param bytes its size, where it has one
 * @param state whether this one is whole
 * @param check what was looked at and what it came to, in a clause
 */
public record Found(String what, OptionalInt line, OptionalLong bytes, LinkState state, String check) {

    /** What is said of a path at which a board finds nothing. */
    static final String LOOKED_FOR = "looked for in the folder";

    static Found file(String path, long bytes, String check) {
        return new Found(path, OptionalInt.empty(), OptionalLong.of(bytes), LinkState.WHOLE, check);
    }

    static Found line(String path, int line, String check) {
        return new Found(path, OptionalInt.of(line), OptionalLong.empty(), LinkState.WHOLE, check);
    }

    static Found words(String what, String check) {
        return new Found(what, OptionalInt.empty(), OptionalLong.empty(), LinkState.WHOLE, check);
    }

    public boolean isWhole() {
        return state == LinkState.WHOLE;
    }

    Found as(LinkState other) {
        return new Found(what, line, bytes, other, check);
    }
}
