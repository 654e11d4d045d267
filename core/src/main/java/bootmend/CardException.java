package bootmend;

import java.io.IOException;
import java.util.Objects;

/** Tells a user what stopped the work on a card, in one sentence, and what to do next, in another. */
public final class CardException extends IOException {

    private static final long serialVersionUID = 1L;

    /** Why the work stopped; each kind has its own exit code in the command line. */
    public enum Kind {
        /** The request itself makes no sense. */
        USAGE,
        /** The card or something on it could not be read. */
        UNREADABLE,
        /** The card is readable, but changing it now would not be safe. */
        REFUSED,
        /** A change began and could not be finished; an undo record is open. */
        CUT_SHORT
    }

    private final Kind kind;
    private final String remedy;

    private CardException(Kind kind, String what, String remedy, Throwable cause) {
        super(what, cause);
        this.kind = Objects.requireNonNull(kind);
        this.remedy = Objects.requireNonNull(remedy);
    }

    public static CardException usage(String what, String remedy) {
        return new CardException(Kind.USAGE, what, remedy, null);
    }

    public static CardException unreadable(String what, String remedy) {
        return new CardException(Kind.UNREADABLE, what, remedy, null);
    }

    public static CardException unreadable(String what, String remedy, Throwable cause) {
        return new CardException(Kind.UNREADABLE, what, remedy, cause);
    }

    public static CardException refused(String what, String remedy) {
        return new CardException(Kind.REFUSED, what, remedy, null);
    }

    public static CardException refused(String what, String remedy, Throwable cause) {
        return new CardException(Kind.REFUSED, what, remedy, cause);
    }

    public static CardException cutShort(String what, String remedy, Throwable cause) {
        return new CardException(Kind.CUT_SHORT, what, remedy, cause);
    }

    public Kind kind() {
        return kind;
    }

    /** What the user can do next, a whole sentence. */
    public String remedy() {
        return remedy;
    }
}
