package bootmend.job;

import bootmend.check.Purpose;
import java.util.Optional;

/**
 * What a card is to be checked for.
 *
 * @param board id of the board that it is for, such as {@code pi4}; without it and without a revision code, every board
 *     that the card can boot
 * @param revision the board's revision code in hexadecimal
 */
public record CheckRequest(CardRequest card, Purpose purpose, Optional<String> board, Optional<String> revision) {
}
