package bootmend.view;

import bootmend.tuning.Caution;
import bootmend.tuning.TuningTables;
import java.util.List;

/**
 * A caution, as a user is shown it.
 *
 * @param id short name, such as {@code heat}
 * @param text whole sentences
 * @param source where it is published, or that it is not
 */
public record CautionView(String id, String text, String source) {

    /** Those that go with any change of clock or voltage. */
    public static List<CautionView> ofTuning(TuningTables tables) {
        return of(tables.cautions().all().stream()
                .filter(caution ->
                        caution.topics().contains("clock") || caution.topics().contains("voltage"))
                .toList());
    }

    static List<CautionView> of(List<Caution> cautions) {
        return cautions.stream()
                .map(caution -> new CautionView(caution.id(), caution.text(), caution.citation()))
                .toList();
    }
}
