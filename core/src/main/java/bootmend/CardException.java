package bootmend;

import java.util.Objects;
import java.util.Optional;

/** Tells a user what stopped the work on a card, in one sentence, and what to do next, in another. */
public final class CardException extends Exception {

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

    /** A risk that a user may take on, upon which the same work is done. */
    public enum Risk {
        /** A file on a full card is overwritten where it stands: a cut in the middle leaves it half old, half new. */
        IN_PLACE,
        /** What one board takes goes on a card for another. */
        OTHER_BOARD,
        /** Settings go on a card although a check finds a blocker in them. */
        BLOCKERS,
        /** What is kept under a name goes for what is kept there now. */
        REPLACE
    }

    private final Kind kind;
    private final String remedy;
    private final Risk risk;

    private CardException(Kind kind, String what, String remedy, Risk risk, Throwable cause) {
        super(what, cause);
        this.kind = Objects.requireNonNull(kind);
        this.remedy = Objects.requireNonNull(remedy);
        this.risk = risk;
    }

    private CardException(Kind kind, String what, String remedy, Throwable cause) {
        this(kind, what, remedy, null, cause);
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

    /** Refused only until the user takes the risk on. */
    public static CardException risky(String what, String remedy, Risk risk) {
        return new CardException(Kind.REFUSED, what, remedy, Objects.requireNonNull(risk), null);
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

    /** Whether it is refused only until that risk is taken on. */
    public boolean isRefusedFor(Risk which) {
        return risk == which;
    }

    /** What the user may take on to have it done all the same. */
    public Optional<Risk> risk() {
        return Optional.ofNullable(risk);
    }
}
