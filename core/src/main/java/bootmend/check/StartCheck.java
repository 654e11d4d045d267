package bootmend.check;

import bootmend.finding.Place;
import bootmend.tuning.Vocabulary;
import java.util.ArrayList;
import java.util.List;

/** What the board will do at its next start beside starting. */
record StartCheck(Vocabulary vocabulary) implements Check {

    private static final String RECOVERY = "recovery.bin";
    private static final String UPDATE = "pieeprom.upd";
    private static final String TRYBOOT = "tryboot.txt";

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        if (card.files().has(RECOVERY) && card.files().has(UPDATE)) {
            boolean tuned = ActiveLineCheck.isTuned(card, vocabulary);
            remarks.add(Remark.of(
                    tuned ? "update-waiting-while-tuned" : "update-waiting",
                    Place.file(RECOVERY),
                    "A boot-firmware update waits on the card (" + RECOVERY + " with " + UPDATE + ")"
                            + (tuned ? " while tuning lines are active." : ".")));
        }
        if (card.files().has(TRYBOOT)) {
            remarks.add(Remark.of("tryboot-file", Place.file(TRYBOOT), "tryboot.txt is on the card."));
        }
        return remarks;
    }
}
