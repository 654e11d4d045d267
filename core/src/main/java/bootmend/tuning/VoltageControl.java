package bootmend.tuning;

import java.util.Optional;
import java.util.OptionalLong;

/**
 * How the core voltage is set on some boards.
 *
 * @param boards those it is for
 * @param left the key on whose scale a board with no voltage key stands at 0; empty where it is on none
 * @param first the key that is tried first
 * @param why why that one, as a part of a sentence
 * @param low lowest voltage that is told of with neither key, in microvolts
 * @param high highest, in microvolts
 * @param top where the voltage stops whatever is set, in microvolts
 * @param citation where it is published
 */
public record VoltageControl(
        BoardSet boards,
        Optional<String> left,
        String first,
        String why,
        OptionalLong low,
        OptionalLong high,
        OptionalLong top,
        String citation) {}
