package bootmend.cli.text;

import bootmend.CardException;
import bootmend.cli.outcome.CommandWords;
import bootmend.cli.outcome.ExitCode;
import bootmend.config.VisibleText;
import java.io.PrintWriter;

/** Prints an error as one sentence on what happened and one on what to do. */
public final class ErrorWords {

    private final PrintWriter err;

    public ErrorWords(PrintWriter err) {
        this.err = err;
    }

    /**
     * Prints the error and gives its exit code.
     *
     * @param card the card it is about, or empty
     */
    public int tell(String card, CardException error) {
        String about = card.isEmpty() ? "" : VisibleText.of(card) + ": ";
        err.println("bootmend: " + about + VisibleText.of(error.getMessage()) + ". "
                + CommandWords.about(card).remedy(error));
        err.flush();
        return ExitCode.of(error);
    }
}
