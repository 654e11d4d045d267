package bootmend.record;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is to be corrected in a trial that is kept; what is empty stays.
 *
 * @param settings each {@code KEY=NUMBER}, or {@code KEY=} for a key that was at stock
 * @param outcome one of the words of {@link bootmend.trial.Outcome}
 * @param minutes at the set clock
 * @param fullLoad whether every processor core was kept busy
 * @param peak in degC
 * @param clock under load, in MHz
 * @param mask throttle report, such as {@code 0x50000}
 * @param scores each {@code NAME=NUMBER}; they go before those it has
 * @param cooling in the user's words
 * @param supply in the user's words
 * @param ambient in degC
 * @param notes in the place of those it has
 * @param log a board's log to hold it against
 * @param despite keeps it, undecided, where that log contradicts it
 */
public record TrialEdit(
        List<String> settings,
        Optional<String> outcome,
        OptionalDouble minutes,
        Optional<Boolean> fullLoad,
        OptionalDouble peak,
        OptionalDouble clock,
        Optional<String> mask,
        List<String> scores,
        Optional<String> cooling,
        Optional<String> supply,
        OptionalDouble ambient,
        Optional<String> notes,
        Optional<Path> log,
        boolean despite) {

    public TrialEdit {
        settings = List.copyOf(settings);
        scores = List.copyOf(scores);
    }
}
