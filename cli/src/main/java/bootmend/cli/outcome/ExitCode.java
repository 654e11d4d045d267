package bootmend.cli.outcome;

import bootmend.CardException;
import bootmend.page.CardOutcome;
import bootmend.page.CardState;

/** The exit codes of every command. */
public final class ExitCode {

    public static final int DONE = 0;
    public static final int BLOCKER = 1;
    public static final int USAGE = 2;
    public static final int UNREADABLE = 3;
    public static final int REFUSED = 4;
    public static final int INTERRUPTED = 5;

    private ExitCode() {}

    public static int of(CardOutcome card) {
        if (!card.wantsAttention()) {
            return DONE;
        }
        return card.state() == CardState.NOT_READY
                ? BLOCKER
                : card.error().map(ExitCode::of).orElse(BLOCKER);
    }

    public static int of(CardException error) {
        return switch (error.kind()) {
            case USAGE -> USAGE;
            case UNREADABLE -> UNREADABLE;
            case REFUSED -> REFUSED;
            case INTERRUPTED -> INTERRUPTED;
        };
    }
}
