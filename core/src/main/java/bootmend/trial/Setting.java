package bootmend.trial;

/**
 * A clock and a voltage step that a board is tried at.
 *
 * @param clock {@code arm_freq}, in MHz
 * @param step {@code over_voltage}, in steps; 0 where the key is not set
 */
public record Setting(long clock, long step) {

    /** As it is said in sentences. */
    public String words() {
        return clock + " MHz at voltage step " + step;
    }

    /** Whether a board that can do this can do {@code other}: no higher clock, no lower voltage. */
    boolean demandsAtLeast(Setting other) {
        return clock >= other.clock && step <= other.step;
    }
}
