package bootmend.trial;

import java.util.List;
import java.util.Objects;

/**
 * What a trial's words rest on.
 *
 * @param settings the file that ran and that its settings were read from, such as {@code tryboot.txt sha256 ...}; empty
 *     where they were told
 * @param log SHA-256 of the board's log; empty where there is none
 * @param contradictions what the log says against the trial, a sentence each; with one, the trial decides nothing
 */
public record Grounds(String settings, String log, List<String> contradictions) {

    /** Nothing but what a user told. */
    public static final Grounds TOLD = new Grounds("", "", List.of());

    /** @throws IllegalArgumentException with a sentence, if a text is too long */
    public Grounds {
        settings = TextLimits.line("file of the settings", settings, TextLimits.MAX_LINE);
        log = TextLimits.line("log's digest", log, TextLimits.MAX_LINE);
        contradictions = List.copyOf(contradictions);
        if (contradictions.size() > TextLimits.MAX_ENTRIES) {
            throw new IllegalArgumentException("there are more than " + TextLimits.MAX_ENTRIES + " contradictions");
        }
        contradictions.forEach(each -> {
            Objects.requireNonNull(each);
            TextLimits.line("contradiction", each, TextLimits.MAX_NOTES);
        });
    }

    /** Whether a log of the board's was held against the trial and does not contradict it. */
    public boolean isLogged() {
        return !log.isEmpty() && contradictions.isEmpty();
    }
}
