package bootmend.trial.search;

import java.util.List;

/**
 * What a search comes to next.
 *
 * @param kind what is to be done
 * @param at where
 * @param minutes how long it should run
 * @param chance that it holds so long
 * @param near chance that what is to be kept lies within a step of clock and a step of voltage of the best there is
 * @param behind what would be next without it, the best first
 */
record Step(Kind kind, Target at, double minutes, double chance, double near, List<Target> behind) {

    Step {
        behind = List.copyOf(behind);
    }

    Step lasting(double otherMinutes) {
        return new Step(kind, at, otherMinutes, chance, near, behind);
    }

    /** What is to be done. */
    enum Kind {
        /** A short run, for what it tells. */
        SCREEN,
        /** A run of 45 minutes at what is to be kept. */
        PROVE,
        /** Nothing is left to gain. */
        DONE,
        /** Nothing holds. */
        NOTHING
    }
}
