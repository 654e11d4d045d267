package bootmend.check;

import bootmend.tuning.TuningNumber;
import bootmend.tuning.resolve.Candidate;
import bootmend.tuning.resolve.Effective;
import bootmend.tuning.resolve.EffectiveState;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * Tuning keys that stand twice with different values, both of which a board reads.
 *
 * <p>Source: the later line wins: a Linux distributor's boards documentation, "Edit the boot configuration", section on
 * format.
 */
record RepeatCheck() implements Check {

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        for (BoardReading board : card.boards()) {
            for (Effective each : board.resolution().effective()) {
                if (each.state() != EffectiveState.IGNORED) {
                    each.shadowed().stream()
                            .filter(line -> isRepeat(line, each.chosen()))
                            .forEach(line -> remarks.add(remark(board, line, each.chosen())));
                }
            }
        }
        return remarks;
    }

    private static boolean isRepeat(Candidate line, Candidate winner) {
        OptionalLong number = TuningNumber.parse(line.value());
        boolean same = number.isPresent()
                ? number.equals(TuningNumber.parse(winner.value()))
                : line.value().equals(winner.value());
        return line.setBy().equals(winner.setBy()) && !same;
    }

    private static Remark remark(BoardReading board, Candidate line, Candidate winner) {
        boolean sameSection = line.file().equals(winner.file())
                && line.source().line().section().equals(winner.source().line().section());
        return Remark.on(
                board,
                sameSection ? "key-set-twice" : "key-overridden",
                Places.of(line),
                line.setBy() + "="
                        + line.written() + " is replaced by " + winner.setBy() + "=" + winner.written() + " ("
                        + Places.of(winner).words() + ").");
    }
}
