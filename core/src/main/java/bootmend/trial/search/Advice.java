package bootmend.trial.search;

import bootmend.trial.HeatEstimate;
import bootmend.trial.Setting;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What to do next with a board, and why.
 *
 * @param action what
 * @param setting with which setting; empty where there is nothing to run
 * @param minutes how long to run it
 * @param chance that it holds so long, 0 to 1; empty where that is not worked out
 * @param why one or more sentences
 * @param change that and why the voltage is set in another way than before; empty where it is not
 * @param outcomes what each outcome would lead to
 * @param behind what would be next without this one, the best first
 * @param stops why other settings that would come next are not suggested, a sentence each
 * @param peak estimated peak temperature at the setting
 * @param noPeak why there is none; empty where there is one or nothing is to be run
 * @param best the setting at the highest clock that held
 * @param bestIsKnownGood whether that one is known-good
 */
public record Advice(
        Action action,
        Optional<Setting> setting,
        OptionalDouble minutes,
        OptionalDouble chance,
        String why,
        String change,
        List<Outlook> outcomes,
        List<Setting> behind,
        List<String> stops,
        Optional<HeatEstimate.Peak> peak,
        String noPeak,
        Optional<Setting> best,
        boolean bestIsKnownGood) {

    /** What to do next. */
    public enum Action {
        TRY("try"),
        /** A run of 45 minutes at what is to be kept. */
        RUN_LONG("run long"),
        /** Better cooling or a better supply before anything else. */
        IMPROVE("improve"),
        STOP("stop");

        private final String word;

        Action(String word) {
            this.word = word;
        }

        /** How JSON says it. */
        public String word() {
            return word;
        }
    }

    /**
     * What an outcome would lead to.
     *
     * @param outcome in words, such as {@code it holds}
     * @param then the next trial after it, in words
     */
    public record Outlook(String outcome, String then) {}

    public Advice {
        outcomes = List.copyOf(outcomes);
        behind = List.copyOf(behind);
        stops = List.copyOf(stops);
    }
}
