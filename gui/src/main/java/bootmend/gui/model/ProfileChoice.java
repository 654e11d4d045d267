package bootmend.gui.model;

import bootmend.CardException;
import bootmend.job.CautionView;
import bootmend.job.ExplainJob;
import bootmend.job.KeyExplanation;
import bootmend.job.ProfileJob;
import bootmend.job.ProfileView;
import bootmend.job.Workplace;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A profile that can be put on cards, with what is to be known about its settings first.
 *
 * @param cautions for heat, voltage and warranty, each once
 */
public record ProfileChoice(ProfileView profile, List<CautionView> cautions) {

    /** Every profile that is kept on this computer, by name. */
    static List<ProfileChoice> all(Workplace workplace) throws CardException {
        ExplainJob explain = new ExplainJob(workplace);
        List<ProfileChoice> choices = new ArrayList<>();
        for (ProfileView profile : new ProfileJob(workplace).list()) {
            Map<String, CautionView> cautions = new LinkedHashMap<>();
            for (String key : profile.settings().keySet()) {
                if (explain.run(key) instanceof KeyExplanation explained) {
                    explained.cautions().forEach(caution -> cautions.putIfAbsent(caution.id(), caution));
                }
            }
            choices.add(new ProfileChoice(profile, List.copyOf(cautions.values())));
        }
        return List.copyOf(choices);
    }
}
