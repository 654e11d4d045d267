package bootmend.check;

import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.Candidate;
import java.util.ArrayList;
import java.util.List;

/** Lines that have a board burn a bit into its chip, which nothing undoes. */
record OneTimeCheck(TuningTables tables) implements Check {

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        for (BoardReading board : card.boards()) {
            for (TuningKey key : tables.vocabulary().keys()) {
                if (key.oneTime() != TuningKey.OneTime.NEVER) {
                    // What is no number may be taken for one; only a plain 0 is known to burn nothing.
                    board.possible(key.key()).stream()
                            .filter(line -> TuningNumber.parse(line.value()).orElse(1) != 0)
                            .map(line -> remark(board, key, line))
                            .forEach(remarks::add);
                }
            }
        }
        return remarks;
    }

    private static Remark remark(BoardReading board, TuningKey key, Candidate line) {
        String unsure = line.condition().dependsOn().stream()
                .findFirst()
                .map(what -> " It depends on " + what + ".")
                .orElse("");
        return Remark.on(
                board,
                key.oneTime() == TuningKey.OneTime.FROM_CARD ? "one-time-bit" : "one-time-bit-over-usb",
                Places.of(line),
                line.setBy() + "=" + line.written() + " is on the card." + unsure);
    }
}
