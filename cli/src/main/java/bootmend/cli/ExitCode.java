package bootmend.cli;

import bootmend.CardException;
import bootmend.page.CardOutcome;
import bootmend.page.CardState;

/** The exit codes of every command. */
final class ExitCode {

    static final int DONE = 0;
    static final int BLOCKER = 1;
    static final int USAGE = 2;
    static final int UNREADABLE = 3;
    static final int REFUSED = 4;
    static final int CUT_SHORT = 5;

    private ExitCode() {}

    static int of(CardOutcome card) {
        if (!card.wantsAttention()) {
            return DONE;
        }
        return card.state() == CardState.NOT_READY
                ? BLOCKER
                : card.error().map(ExitCode::of).orElse(BLOCKER);
    }

    static int of(CardException error) {
        return switch (error.kind()) {
            case USAGE -> USAGE;
            case UNREADABLE -> UNREADABLE;
            case REFUSED -> REFUSED;
            case CUT_SHORT -> CUT_SHORT;
        };
    }
}
