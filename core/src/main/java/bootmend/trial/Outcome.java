package bootmend.trial;

import java.util.Arrays;
import java.util.Optional;

/** How a trial ended, as its user saw it. */
public enum Outcome {
    /** It booted; no more was tried. */
    BOOTS("boots"),
    NO_BOOT("no boot"),
    LOCKS_UP("locks up"),
    /** It ran, but wrongly: crashing programs, wrong results, damaged files. */
    MISBEHAVES("misbehaves"),
    /** It ran, but the board lowered its own clock. */
    THROTTLES("throttles"),
    HOLDS("holds");

    private final String word;

    Outcome(String word) {
        this.word = word;
    }

    /** How files, options and listings say it. */
    public String word() {
        return word;
    }

    /** Whether the setting did not work, which more voltage may mend. */
    public boolean isFailure() {
        return this == NO_BOOT || this == LOCKS_UP || this == MISBEHAVES;
    }

    /** The outcome that a word means; {@code no-boot} and {@code no_boot} are as good as {@code no boot}. */
    public static Optional<Outcome> of(String word) {
        String plain = word.strip().replace('-', ' ').replace('_', ' ');
        return Arrays.stream(values())
                .filter(outcome -> outcome.word.equalsIgnoreCase(plain))
                .findFirst();
    }
}
