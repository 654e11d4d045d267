package bootmend.record;

import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A trial to be kept, as a user tells it.
 *
 * @param label the user's own name of the physical board
 * @param board which kind of board it is; may be left out where earlier trials with this label say so
 * @param card a card whose tuning lines were in force
 * @param settings each {@code KEY=NUMBER}; they go before what the card says
 * @param log a board's log, for what is not told otherwise
 * @param outcome one of the words of {@link bootmend.trial.Outcome}
 * @param measured what was measured
 * @param cooling in the user's words, possibly empty
 * @param supply in the user's words, possibly empty
 * @param ambient in degC
 * @param when such as {@code 2026-11-24T15:30:00Z}; where left out, now
 * @param notes possibly empty
 * @param despite keeps the trial, undecided, where its log contradicts it
 */
public record TrialRequest(
        String label,
        BoardRequest board,
        Optional<CardRequest> card,
        List<String> settings,
        Optional<Path> log,
        String outcome,
        Measured measured,
        String cooling,
        String supply,
        OptionalDouble ambient,
        Optional<String> when,
        String notes,
        boolean despite) {

    /** One that is not kept where its log contradicts it. */
    public TrialRequest(
            String label,
            BoardRequest board,
            Optional<CardRequest> card,
            List<String> settings,
            Optional<Path> log,
            String outcome,
            Measured measured,
            String cooling,
            String supply,
            OptionalDouble ambient,
            Optional<String> when,
            String notes) {
        this(label, board, card, settings, log, outcome, measured, cooling, supply, ambient, when, notes, false);
    }

    /**
     * What was measured; a value given here goes before the log's.
     *
     * @param minutes at the set clock
     * @param fullLoad whether every processor core was kept busy
     * @param peak in degC
     * @param clock under load, in MHz
     * @param mask throttle report, such as {@code 0x50000}
     * @param scores each {@code NAME=NUMBER}, higher is better
     */
    public record Measured(
            OptionalDouble minutes,
            boolean fullLoad,
            OptionalDouble peak,
            OptionalDouble clock,
            Optional<String> mask,
            List<String> scores) {

        public Measured {
            scores = List.copyOf(scores);
        }
    }

    public TrialRequest {
        settings = List.copyOf(settings);
    }
}
