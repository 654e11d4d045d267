package bootmend.change;

import bootmend.CardException;
import bootmend.NextStep;
import java.io.IOException;

/**
 * The one way in which bytes reach a target, and the one policy for its failures: what fails before the first write is
 * REFUSED, and nothing was written; what fails from then on is INTERRUPTED, and the undo record stays open.
 */
final class Attempt {

    /** Works the writes out; reads only. */
    @FunctionalInterface
    interface Preparation {
        Target.Writing run() throws CardException, IOException;
    }

    /** Reads back what was written and says whether the second reader agrees. */
    @FunctionalInterface
    interface Check {
        boolean run() throws CardException, IOException;
    }

    /** Notes in the store what is now known to stand on the card. */
    @FunctionalInterface
    interface Note {
        UndoRecord run() throws CardException, IOException;
    }

    private final Target target;
    private final UndoRecord record;
    private final String what;

    /** @param what is attempted, as the subject of a sentence */
    Attempt(Target target, UndoRecord record, String what) {
        this.target = target;
        this.record = record;
        this.what = what;
    }

    Committed.Recorded run(Preparation preparation, Check check, Note note) throws CardException {
        Target.Writing writing = prepared(preparation);
        boolean agrees;
        try {
            writing.run();
            agrees = check.run();
        } catch (CardException | IOException | RuntimeException e) {
            throw CardException.interrupted(
                    what + " was interrupted (" + e.getMessage() + ")",
                    target.again(),
                    e,
                    NextStep.RecoverCard.of(record.file()));
        }
        try {
            return target.committed(note.run(), agrees);
        } catch (CardException | IOException | RuntimeException e) {
            throw CardException.interrupted(
                    what + " was written and read back, but its undo record " + record.file()
                            + " could not be put away (" + e.getMessage() + ")",
                    "Make room in bootmend's data folder. " + target.again(),
                    e,
                    NextStep.RecoverCard.of(record.file()));
        }
    }

    private Target.Writing prepared(Preparation preparation) throws CardException {
        try {
            if (!target.isStillNamed()) {
                throw CardException.refused(
                        "another file or card took the name since it was opened",
                        "Nothing was written.",
                        NextStep.Plain.SHOW_CARD);
            }
            return preparation.run();
        } catch (CardException e) {
            throw e;
        } catch (IOException | RuntimeException e) {
            throw CardException.refused(
                    what + " could not begin (" + e.getMessage() + ")",
                    "Nothing was written. Check that the card sits firmly in its reader, then try again.",
                    e);
        }
    }
}
