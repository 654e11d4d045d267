package bootmend.config;

import java.util.List;
import java.util.stream.Stream;

/**
 * Whether something holds on a board, and if that cannot be told, what it depends on.
 *
 * @param dependsOn phrases such as {@code the level of pin 4}; empty unless {@code truth} is unknown
 */
public record Condition(Truth truth, List<String> dependsOn) {

    public static final Condition HOLDS = new Condition(Truth.TRUE, List.of());
    public static final Condition FAILS = new Condition(Truth.FALSE, List.of());

    public Condition {
        dependsOn = List.copyOf(dependsOn);
        if (dependsOn.isEmpty() == (truth == Truth.UNKNOWN)) {
            throw new IllegalArgumentException("A condition depends on something exactly when it is unknown.");
        }
    }

    public static Condition of(boolean holds) {
        return holds ? HOLDS : FAILS;
    }

    /** A condition that cannot be told; {@code what} says what it depends on. */
    public static Condition dependsOn(String what) {
        return new Condition(Truth.UNKNOWN, List.of(what));
    }

    /** Both hold. */
    public Condition and(Condition other) {
        Truth both = truth.and(other.truth);
        return new Condition(both, both != Truth.UNKNOWN ? List.of()
                : Stream.concat(dependsOn.stream(), other.dependsOn.stream()).distinct().toList());
    }
}
