package bootmend.cli.run;

import bootmend.CardException;
import java.io.Console;
import java.util.Locale;

/** Asks before a card is changed; without a terminal there is nobody to ask, so nothing is changed. */
public final class Question {

    private final Console console;

    /** @param console null where there is no terminal */
    public Question(Console console) {
        this.console = console;
    }

    /** Whether there is someone to ask. */
    public boolean canAsk() {
        return console != null;
    }

    /** Whether the answer is yes; anything but a plain yes is no. */
    public boolean ask(String question) throws CardException {
        if (console == null) {
            throw CardException.refused(
                    "there is no terminal to ask on, so nothing was changed",
                    "Give --yes to do it without asking; before a change to a card, look at the plan with --dry-run.");
        }
        String answer = console.readLine("%s [y/N] ", question);
        return answer != null && answer.strip().toLowerCase(Locale.ROOT).matches("y|yes");
    }
}
