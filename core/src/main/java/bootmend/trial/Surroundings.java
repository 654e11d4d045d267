package bootmend.trial;

import java.util.OptionalDouble;

/**
 * What was around the board while a trial ran.
 *
 * @param cooling in the user's words, possibly empty; trials are compared by it
 * @param supply in the user's words, possibly empty
 * @param ambient temperature of the air, in degC
 */
public record Surroundings(String cooling, String supply, OptionalDouble ambient) {

    /** Nothing is known. */
    public static final Surroundings UNKNOWN = new Surroundings("", "", OptionalDouble.empty());

    /** @throws IllegalArgumentException with a sentence, if a text is too long or the temperature out of range */
    public Surroundings {
        cooling = TextLimits.line("cooling", cooling, TextLimits.MAX_LINE);
        supply = TextLimits.line("supply", supply, TextLimits.MAX_LINE);
        Quantity.AMBIENT.check(ambient);
    }

    /** Whether the cooling is called the same. */
    public boolean sameCooling(Surroundings other) {
        return cooling.equalsIgnoreCase(other.cooling);
    }

    /** Whether cooling and supply are called the same. */
    public boolean isLike(Surroundings other) {
        return sameCooling(other) && supply.equalsIgnoreCase(other.supply);
    }
}
