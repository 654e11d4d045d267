package bootmend.trial;

/**
 * One physical board.
 *
 * @param board which kind of board it is: a board id such as {@code pi4}
 * @param label the user's own name for it, such as {@code lab-07}; 1 to 60 characters
 */
public record Unit(String board, String label) {

    /** @throws IllegalArgumentException with a sentence, if the label or the board id cannot be one */
    public Unit {
        board = TextLimits.name("board id", board, TextLimits.MAX_LABEL);
        label = TextLimits.name("board's label", label, TextLimits.MAX_LABEL);
    }
}
