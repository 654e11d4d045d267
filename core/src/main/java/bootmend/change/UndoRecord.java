package bootmend.change;

import java.nio.file.Path;
import java.time.Instant;

/**
 * A change as it is kept on this computer, with the bytes from before it.
 *
 * @param id a part of its file's name, which sorts by time
 * @param created when it was written, just before the change's first write
 * @param medium the card that the change was made to, as far as the system told it
 * @param takesBack id of the change that this one undoes, or empty
 * @param state how far the change came
 * @param file where the record lies now
 */
public record UndoRecord(
        String id, Instant created, Medium medium, Plan plan, String takesBack, State state, Path file) {

    /** How far a change came. */
    public enum State {
        /** Begun, and not known to be finished. */
        OPEN,
        /** Written, forced and read back. */
        DONE,
        /** Done, and undone since. */
        UNDONE,
        /** Given up by the user while it was open; what stands on its card was not looked at. */
        FORGOTTEN
    }

    /** Where the card was then. */
    public String cardPath() {
        return medium.place();
    }

    UndoRecord in(State newState, Path newFile) {
        return new UndoRecord(id, created, medium, plan, takesBack, newState, newFile);
    }

    boolean takesOtherBack() {
        return !takesBack.isEmpty();
    }
}
