package bootmend.job;

import bootmend.tuning.Caution;
import java.util.List;

/**
 * A caution, as a user is shown it.
 *
 * @param id short name, such as {@code heat}
 * @param text whole sentences
 * @param source where it is published, or that it is not
 */
public record CautionView(String id, String text, String source) {

    static List<CautionView> of(List<Caution> cautions) {
        return cautions.stream()
                .map(caution -> new CautionView(caution.id(), caution.text(), caution.citation())).toList();
    }
}
