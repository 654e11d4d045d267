package bootmend.tuning;

import java.util.OptionalLong;

/**
 * How far a key's value is published to reach on some boards.
 *
 * @param min lowest value that does, in the key's unit, where one is told
 * @param max highest value that does, where one is told
 * @param kind what happens beyond it
 * @param why a phrase on what limits it
 * @param citation where that is published
 */
public record Reach(
        String key, BoardSet boards, OptionalLong min, OptionalLong max, Kind kind, String why, String citation) {

    /** What happens beyond a limit. */
    public enum Kind {
        /** The board does not start, or hangs. */
        HANGS("hangs"),
        /** The board does not go beyond it. */
        HELD("held"),
        /** Users' reports alone tell of it. */
        REPORTED("reported"),
        /** The maker does not support it. */
        UNSUPPORTED("unsupported");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        String word() {
            return word;
        }
    }

    public boolean isPassedBy(long value) {
        return value < min.orElse(value) || value > max.orElse(value);
    }
}
