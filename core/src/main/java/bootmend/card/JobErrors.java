package bootmend.card;

import bootmend.CardException;
import bootmend.ReportedIOException;
import java.io.IOException;

/** Words for failures that no lower room has words for. */
public final class JobErrors {

    private JobErrors() {}

    public static CardException unreadable(IOException e) {
        if (e instanceof ReportedIOException reported) {
            return reported.report();
        }
        return CardException.unreadable(
                "it could not be read (" + e.getMessage() + ")",
                "Check that the card sits firmly in its reader; if it does, make an image of it and try with that.",
                e);
    }
}
