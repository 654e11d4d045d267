package bootmend.record;

import bootmend.CardException;
import bootmend.trial.Trial;
import java.util.List;

/**
 * The trials on this computer.
 *
 * @param trials oldest first
 * @param problems one for each file that could not be read
 */
public record TrialListing(List<Listed> trials, List<CardException> problems) {

    /**
     * A trial, where it is kept, and its throttle mask in words.
     */
    public record Listed(Trial trial, String file, List<String> bits) {

        public Listed {
            bits = List.copyOf(bits);
        }
    }

    public TrialListing {
        trials = List.copyOf(trials);
        problems = List.copyOf(problems);
    }
}
