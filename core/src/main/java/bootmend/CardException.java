package bootmend;

import java.util.List;
import java.util.Objects;

/**
 * Tells a user what stopped the work on a card, in one sentence, and what to do next: in sentences that name no front end's
 * command, and in steps that each front end puts into its own words. There is always one or the other.
 */
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
        INTERRUPTED
    }

    private final Kind kind;
    private final String remedy;
    private final transient List<NextStep> steps;

    private CardException(Kind kind, String what, String remedy, Throwable cause, NextStep... steps) {
        super(what, cause);
        this.kind = Objects.requireNonNull(kind);
        this.remedy = Objects.requireNonNull(remedy);
        this.steps = List.of(steps);
        if (remedy.isEmpty() && this.steps.isEmpty()) {
            throw new IllegalArgumentException("an error says what to do");
        }
    }

    /** @param remedy whole sentences that hold no command; may be empty where there are steps */
    public static CardException usage(String what, String remedy, NextStep... steps) {
        return new CardException(Kind.USAGE, what, remedy, null, steps);
    }

    /** @param remedy whole sentences that hold no command; may be empty where there are steps */
    public static CardException unreadable(String what, String remedy, NextStep... steps) {
        return new CardException(Kind.UNREADABLE, what, remedy, null, steps);
    }

    /** @param remedy whole sentences that hold no command; may be empty where there are steps */
    public static CardException unreadable(String what, String remedy, Throwable cause, NextStep... steps) {
        return new CardException(Kind.UNREADABLE, what, remedy, cause, steps);
    }

    /**
     * Not done; done where a step {@link NextStep.Allow allows} it.
     *
     * @param remedy whole sentences that hold no command; may be empty where there are steps
     */
    public static CardException refused(String what, String remedy, NextStep... steps) {
        return new CardException(Kind.REFUSED, what, remedy, null, steps);
    }

    /** @param remedy whole sentences that hold no command; may be empty where there are steps */
    public static CardException refused(String what, String remedy, Throwable cause, NextStep... steps) {
        return new CardException(Kind.REFUSED, what, remedy, cause, steps);
    }

    /** @param remedy whole sentences that hold no command; may be empty where there are steps */
    public static CardException interrupted(String what, String remedy, Throwable cause, NextStep... steps) {
        return new CardException(Kind.INTERRUPTED, what, remedy, cause, steps);
    }

    /** The same, its message told of {@code name}, where several things could be meant. */
    public CardException about(String name) {
        return new CardException(kind, name + ": " + getMessage(), remedy, this, steps.toArray(NextStep[]::new));
    }

    public Kind kind() {
        return kind;
    }

    /** What the user can do next, in whole sentences without the steps; may be empty. */
    public String remedy() {
        return remedy;
    }

    /** What the user can do next after that; may be empty where there is a remedy. */
    public List<NextStep> steps() {
        return steps;
    }

    /** Whether it is refused only until that is allowed. */
    public boolean isRefusedFor(NextStep.Allow which) {
        return steps.contains(which);
    }
}
