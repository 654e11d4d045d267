package bootmend.check;

import bootmend.finding.Place;
import bootmend.tuning.Vocabulary;
import java.util.ArrayList;
import java.util.List;

/** What is good practice for a purpose whatever the card holds, and, on a tuned card, for heat and supply. */
record PracticeCheck(Vocabulary vocabulary) implements Check {

    private static final Place GENERAL = Place.Region.GENERAL;

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        remarks.add(
                Remark.of("practice-stability-run", GENERAL, "A stability run loads every core for about 45 minutes."));
        remarks.add(Remark.of(
                "practice-firmware-update",
                GENERAL,
                "A firmware update wants everything at stock, and power that does not fail."));
        if (ActiveLineCheck.isTuned(card, vocabulary)) {
            remarks.add(Remark.of(
                    "practice-heat-and-supply",
                    GENERAL,
                    "The card is tuned, so heat sink and supply must fit the setting."));
        }
        return remarks;
    }
}
