package bootmend.profile;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A named set of tuning settings for a board, with the evidence that it holds.
 *
 * @param name lower-case letters, digits, {@code .}, {@code _} and {@code -}; also its file's name
 * @param board the board's model filter, such as {@code pi4}
 * @param settings tuning key to value, as they stand on a card, in the order they are written
 * @param cooling what cools the board, in the user's words, possibly empty
 * @param supply what feeds it, possibly empty
 * @param evidence trials of these settings on such a board
 * @param notes anything else, possibly empty
 */
public record Profile(
        String name,
        String board,
        Map<String, String> settings,
        String cooling,
        String supply,
        List<Evidence> evidence,
        String notes) {

    public Profile {
        settings = Collections.unmodifiableMap(new LinkedHashMap<>(settings));
        evidence = List.copyOf(evidence);
    }

    /** Whether a passing trial backs it; without one it is unproven. */
    public boolean isKnownGood() {
        return evidence.stream().anyMatch(Evidence::passes);
    }

    Profile withName(String newName) {
        return new Profile(newName, board, settings, cooling, supply, evidence, notes);
    }
}
