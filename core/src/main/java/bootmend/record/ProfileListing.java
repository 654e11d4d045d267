package bootmend.record;

import bootmend.CardException;
import bootmend.view.CautionView;
import java.util.List;

/**
 * The profiles on this computer.
 *
 * @param profiles by name
 * @param problems one for each file that could not be read
 * @param cautions what putting any of them on a card can do
 */
public record ProfileListing(List<ProfileView> profiles, List<CardException> problems, List<CautionView> cautions) {

    public ProfileListing {
        profiles = List.copyOf(profiles);
        problems = List.copyOf(problems);
        cautions = List.copyOf(cautions);
    }
}
