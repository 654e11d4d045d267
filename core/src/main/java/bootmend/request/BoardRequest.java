package bootmend.request;

import java.util.List;
import java.util.Optional;

/**
 * What a user says about the board that a card is for, as it was typed; what is left out is unknown.
 *
 * @param board board id, such as {@code pi4}
 * @param revision revision code, such as {@code c03111}; it implies the board
 * @param serial serial number in hexadecimal, up to 16 digits
 * @param pins levels of pins at start, each {@code PIN=0} or {@code PIN=1}
 * @param monitors names of the attached monitors; present and empty says that none is attached
 * @param tryboot whether the board is started with its try-once flag
 * @param bootVariables values of boot variables, each {@code NAME=NUMBER}
 */
public record BoardRequest(
        Optional<String> board,
        Optional<String> revision,
        Optional<String> serial,
        List<String> pins,
        Optional<List<String>> monitors,
        Optional<Boolean> tryboot,
        List<String> bootVariables) {

    public BoardRequest {
        pins = List.copyOf(pins);
        monitors = monitors.map(List::copyOf);
        bootVariables = List.copyOf(bootVariables);
    }

    /** Nothing is known about the board. */
    public static BoardRequest none() {
        return new BoardRequest(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                List.of());
    }

    /** The board is known, nothing else. */
    public static BoardRequest of(String board) {
        return new BoardRequest(
                Optional.of(board),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                List.of());
    }
}
