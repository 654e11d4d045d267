package bootmend.record;

import java.util.Objects;
import java.util.Optional;

/**
 * Whose trials are looked at: a board's, or those it had under one cooling.
 *
 * @param label the board's
 * @param cooling in the words that its trials have; empty for all
 */
public record TrialSide(String label, Optional<String> cooling) {

    public TrialSide {
        Objects.requireNonNull(label);
        Objects.requireNonNull(cooling);
    }

    public static TrialSide of(String label) {
        return new TrialSide(label, Optional.empty());
    }

    /** As headings say it. */
    public String words() {
        return label
                + cooling.map(each -> ", " + (each.isEmpty() ? "cooling not said" : each))
                        .orElse("");
    }
}
