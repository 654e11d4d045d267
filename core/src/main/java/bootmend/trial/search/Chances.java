package bootmend.trial.search;

import java.util.function.ToDoubleBiFunction;

/**
 * How likely a board is to hold 45 minutes at a clock and a voltage, 0 to 1, by all its trials.
 *
 * @param of by clock in MHz and voltage in the unit of the axis
 */
public record Chances(ToDoubleBiFunction<Double, Double> of) {

    public double at(double clock, double amount) {
        return of.applyAsDouble(clock, amount);
    }
}
