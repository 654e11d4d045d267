package bootmend.request;

import java.nio.file.Path;
import java.util.OptionalInt;

/**
 * Which card, and which partition of it where the choice is not left to bootmend.
 *
 * @param partition counts from 1
 */
public record CardRequest(Path card, OptionalInt partition) {

    public static CardRequest of(Path card) {
        return new CardRequest(card, OptionalInt.empty());
    }
}
