package bootmend.record;

import bootmend.CardException;
import bootmend.trial.Trial;
import java.util.List;

/**
 * The trials on this computer.
 *
 * @param trials those that were asked for, oldest first
 * @param problems one for each file that could not be read
 * @param all how many there are, whatever was asked for
 */
public record TrialListing(List<Listed> trials, List<CardException> problems, int all) {

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
