package bootmend.operation;

import java.util.OptionalInt;

/**
 * How far back a card goes.
 *
 * @param to the change after which the card is to be as it was then, 0 for before the first; empty takes the last back
 * @param inPlace whether a full card may be overwritten where the file stands
 */
public record UndoRequest(OptionalInt to, boolean inPlace) {

    /** The last change taken back. */
    public static final UndoRequest LAST = new UndoRequest(OptionalInt.empty(), false);
}
