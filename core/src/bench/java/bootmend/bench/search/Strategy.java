package bootmend.bench.search;

import bootmend.trial.Setting;
import java.util.Optional;

/** A way to look for a board's best setting. */
interface Strategy {

    String words();

    /** Runs trials until it knows what to keep; empty where it keeps nothing. */
    Optional<Setting> keep(Lab lab);
}
