package bootmend.gui.model;

import bootmend.CardException;
import bootmend.gui.text.Words;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What to do about an error, with the window's own places in the stead of the commands and options that it names. */
public final class Remedy {

    private static final Pattern COMMAND = Pattern.compile("`bootmend ([a-z]+)(?: [^`]*)?`|--([a-z-]+[a-z])");

    private final Words words;

    public Remedy(Words words) {
        this.words = words;
    }

    public String of(CardException error) {
        return of(error.remedy());
    }

    /** A sentence of core's, which speaks of commands. */
    public String of(String sentence) {
        return COMMAND.matcher(sentence).replaceAll(this::place);
    }

    private String place(MatchResult match) {
        String key = match.group(1) == null ? "option." + match.group(2) : "command." + match.group(1);
        return Matcher.quoteReplacement(words.has(key) ? words.of(key) : match.group());
    }
}
