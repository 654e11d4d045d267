package bootmend.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a log says of itself in lines that start with {@code #}: which way each figure was measured, and which config file ran.
 *
 * @param sources sentences such as {@code clock by the firmware's own measure}
 * @param configs the config files that lay on the board, as {@code NAME sha256 HEX}
 * @param tryOnce whether the board was started once with its try-once flag; empty where the log does not say
 */
record LogClues(List<String> sources, List<String> configs, Optional<Boolean> tryOnce) {

    static final LogClues NONE = new LogClues(List.of(), List.of(), Optional.empty());

    private static final Pattern CONFIG = Pattern.compile("([A-Za-z0-9._-]{1,40}) sha256 ([0-9a-f]{64})");
    private static final int MOST = 16;
    private static final int LONGEST = 120;

    LogClues {
        sources = List.copyOf(sources);
        configs = List.copyOf(configs);
    }

    /** These and what a comment line says; a line that is none of these changes nothing. */
    LogClues with(String line) {
        String text = line.replaceFirst("^#+", "").strip();
        int colon = text.indexOf(':');
        if (colon < 0 || text.length() > LONGEST || text.chars().anyMatch(Character::isISOControl)) {
            return this;
        }
        String value = text.substring(colon + 1).strip();
        return switch (text.substring(0, colon).strip()) {
            case "source" -> new LogClues(added(sources, value), configs, tryOnce);
            case "config" -> {
                Matcher matcher = CONFIG.matcher(value);
                yield matcher.matches() ? new LogClues(sources, added(configs, value), tryOnce) : this;
            }
            case "try-once" ->
                value.equals("yes") || value.equals("no")
                        ? new LogClues(sources, configs, Optional.of(value.equals("yes")))
                        : this;
            default -> this;
        };
    }

    private static List<String> added(List<String> all, String one) {
        if (all.size() >= MOST || all.contains(one)) {
            return all;
        }
        List<String> more = new ArrayList<>(all);
        more.add(one);
        return more;
    }
}
