package bootmend.batch;

import bootmend.CardException;
import java.util.Optional;

/**
 * One card's turn at a station.
 *
 * @param number counts from 1
 * @param path the device it was in
 * @param outcome how it ended
 * @param words what was done or what kept it from that, a whole sentence
 * @param error why it failed, where it did
 */
public record StationTurn(int number, String path, Outcome outcome, String words, Optional<CardException> error) {

    /** How a card's turn ended. */
    public enum Outcome {
        /** The job was done. */
        DONE,
        /** The card was as wanted already. */
        NOTHING_TO_DO,
        /** The job was done, and the card is not ready: a check found a blocker. */
        NOT_READY,
        /** The job could not be done. */
        FAILED
    }
}
