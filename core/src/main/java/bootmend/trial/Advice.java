package bootmend.trial;

import java.util.List;
import java.util.Optional;

/**
 * What to do next with a board, and why.
 *
 * @param action what
 * @param setting with which setting; empty where there is nothing to run
 * @param why one or two sentences
 * @param stops why other settings that would come next are not suggested, a sentence each
 * @param peak estimated peak temperature at the setting
 * @param noPeak why there is none; empty where there is one or nothing is to be run
 * @param best the setting at the highest clock that held
 * @param bestIsKnownGood whether that one held for long enough under full load
 */
public record Advice(
        Action action,
        Optional<Setting> setting,
        String why,
        List<String> stops,
        Optional<HeatEstimate.Peak> peak,
        String noPeak,
        Optional<Setting> best,
        boolean bestIsKnownGood) {

    /** What to do next. */
    public enum Action {
        TRY("try"),
        /** The setting held, but not for long enough to be known-good. */
        RUN_LONG("run long"),
        /** Better cooling or a better supply before anything else. */
        MEND("mend"),
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

    public Advice {
        stops = List.copyOf(stops);
    }
}
