package bootmend.change;

import java.nio.file.Path;
import java.time.Instant;

/**
 * A change as it is kept on this computer, with the bytes from before it.
 *
 * @param id its file's name, which sorts by time
 * @param created when it was written, just before the change's first write
 * @param cardPath where the card was then
 * @param takesBack id of the change that this one takes back, or empty
 * @param state how far the change came
 * @param file where the record lies now
 */
public record UndoRecord(
        String id, Instant created, String cardPath, Plan plan, String takesBack, State state, Path file) {

    /** How far a change came. */
    public enum State {
        /** Begun, and not known to be finished. */
        OPEN,
        /** Written, forced and read back. */
        DONE,
        /** Done, and taken back since. */
        TAKEN_BACK
    }

    boolean takesOtherBack() {
        return !takesBack.isEmpty();
    }
}
