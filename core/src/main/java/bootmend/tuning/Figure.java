package bootmend.tuning;

import java.util.function.DoubleBinaryOperator;

/** A number that may not be known: a value, or why there is none. Never a guess. */
public sealed interface Figure {

    /** A known value; the method that hands it out says in which unit. */
    record Value(double value) implements Figure {}

    /** No source publishes it; {@code what} names what is missing. */
    record NotPublished(String what) implements Figure {}

    /** It hangs on something about the board that is not known; {@code what} names that. */
    record DependsOn(String what) implements Figure {}

    /** The sum, ratio or other result of two figures; without a value where one of them has none. */
    default Figure with(Figure other, DoubleBinaryOperator operation) {
        if (this instanceof Value left && other instanceof Value right) {
            return new Value(operation.applyAsDouble(left.value(), right.value()));
        }
        if (this instanceof NotPublished || this instanceof DependsOn && !(other instanceof NotPublished)) {
            return this;
        }
        return other;
    }
}
