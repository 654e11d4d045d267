package bootmend.operation;

import java.util.Optional;

/**
 * Which profile goes on a card, and which risks the user takes on.
 *
 * @param name the profile's
 * @param board the board the card is for, where it is not the profile's own
 * @param otherBoard whether a profile of another board may go on the card
 * @param despiteBlockers whether it may although a check finds a blocker in it
 * @param inPlace whether a full card may be overwritten where the file stands
 */
public record ProfileRequest(
        String name, Optional<String> board, boolean otherBoard, boolean despiteBlockers, boolean inPlace) {

    /** The profile for its own board, with no risk taken. */
    public static ProfileRequest of(String name) {
        return new ProfileRequest(name, Optional.empty(), false, false, false);
    }
}
