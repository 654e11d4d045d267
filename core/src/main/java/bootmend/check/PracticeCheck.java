package bootmend.check;

import bootmend.tuning.Vocabulary;
import java.util.ArrayList;
import java.util.List;

/** What is good practice for a purpose whatever the card holds, and, on a tuned card, for heat and supply. */
record PracticeCheck(Vocabulary vocabulary) implements Check {

    private static final Place BENCH = Place.file("the bench");

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        remarks.add(Remark.of("practice-stability-run", BENCH, "A stability run takes its time."));
        remarks.add(Remark.of("practice-firmware-update", BENCH, "A firmware update needs stock and steady power."));
        if (ActiveLineCheck.isTuned(card, vocabulary)) {
            remarks.add(Remark.of("practice-heat-and-supply", BENCH, "The card is tuned: heat and supply count."));
        }
        return remarks;
    }
}
