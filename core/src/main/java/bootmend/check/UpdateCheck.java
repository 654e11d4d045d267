package bootmend.check;

import bootmend.finding.Place;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.Vocabulary;
import bootmend.tuning.resolve.EffectiveState;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Boot-firmware updates that wait on the card, and what is left of those that ran. */
record UpdateCheck(Vocabulary vocabulary, UpdateFiles updates) implements Check {

    private static final String SWITCH = "bootloader_update";
    /** Source: "Boot EEPROM", boot-eeprom.adoc, commit 01d01d3f, and the update scripts, commit 86759b04. */
    private static final Pattern USED = Pattern.compile("(?i)recovery\\.[0-9]{3}");

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        boolean tuned = ActiveLineCheck.isTuned(card, vocabulary);
        for (BoardReading board : card.boards()) {
            updates.on(card.files(), board.id())
                    .ifPresent(rule -> remarks.add(remark(board, rule, tuned, card.files())));
        }
        card.files().inRoot().stream()
                .filter(entry -> USED.matcher(entry.name()).matches())
                .forEach(entry -> remarks.add(Remark.of(
                        "update-leftover",
                        Place.file(entry.path()),
                        entry.path() + " is the program of an update that ran.")));
        return remarks;
    }

    private static Remark remark(BoardReading board, UpdateFiles.Rule rule, boolean tuned, CardFiles files) {
        String names = String.join(" with ", rule.needs());
        Place where = Place.file(files.file(rule.needs().get(0)).orElseThrow().path());
        boolean off = rule.bySelf() && isSwitchedOff(board);
        return switch (off ? UpdateFiles.State.NOTHING : rule.state()) {
            case WAITS, PERHAPS ->
                Remark.on(
                        board,
                        tuned ? "update-waiting-while-tuned" : "update-waiting",
                        where,
                        "A boot-firmware update " + (rule.state() == UpdateFiles.State.WAITS ? "waits" : "may wait")
                                + " on the card (" + names + ")" + (tuned ? " while tuning lines are active" : "")
                                + ": " + rule.does());
            case ALONE -> Remark.on(board, "update-program-alone", where, names + " is on the card: " + rule.does());
            case NOTHING ->
                Remark.on(
                        board,
                        "update-leftover",
                        where,
                        names + " is on the card: " + (off ? SWITCH + "=0 keeps the board from it." : rule.does()));
        };
    }

    private static boolean isSwitchedOff(BoardReading board) {
        return board.resolution()
                .tuning(SWITCH)
                .filter(each -> each.state() == EffectiveState.SET)
                .filter(each -> TuningNumber.parse(each.value()).orElse(1) == 0)
                .isPresent();
    }
}
