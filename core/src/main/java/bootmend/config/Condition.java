package bootmend.config;

import java.util.List;
import java.util.stream.Stream;

/**
 * Whether something holds on a board, and if that cannot be told, what it depends on.
 *
 * @param dependsOn phrases such as {@code the level of pin 4}, at most {@value #MAX_REASONS} of them; empty unless
 *     {@code truth} is unknown
 */
public record Condition(Truth truth, List<String> dependsOn) {

    public static final Condition HOLDS = new Condition(Truth.TRUE, List.of());
    public static final Condition FAILS = new Condition(Truth.FALSE, List.of());

    /** How many phrases are kept; the last then says that there are more. A bound against hostile cards. */
    public static final int MAX_REASONS = 16;

    public Condition {
        dependsOn = dependsOn.size() <= MAX_REASONS
                ? List.copyOf(dependsOn)
                : Stream.concat(dependsOn.stream().limit(MAX_REASONS - 1), Stream.of("more than can be listed"))
                        .toList();
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

    /** An unknown condition that depends on all that these do; one of them at least is unknown. */
    public static Condition dependsOnAll(Stream<Condition> conditions) {
        return new Condition(
                Truth.UNKNOWN,
                conditions
                        .flatMap(each -> each.dependsOn.stream())
                        .distinct()
                        .limit(MAX_REASONS + 1)
                        .toList());
    }

    /** Both hold. */
    public Condition and(Condition other) {
        Truth both = truth.and(other.truth);
        return both == Truth.UNKNOWN ? dependsOnAll(Stream.of(this, other)) : of(both == Truth.TRUE);
    }
}
