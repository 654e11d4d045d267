package bootmend.check;

import bootmend.tuning.TuningKey;
import bootmend.tuning.Vocabulary;
import bootmend.tuning.resolve.Candidate;
import bootmend.tuning.resolve.Effective;
import bootmend.tuning.resolve.EffectiveState;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Tuning keys that a board does nothing with, and keys that only their names tell to be tuning. */
record UseCheck(Vocabulary vocabulary) implements Check {

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        for (BoardReading board : card.boards()) {
            for (Effective each : board.resolution().effective()) {
                TuningKey key = vocabulary.findOnCard(each.key()).orElseThrow();
                if (each.state() == EffectiveState.IGNORED) {
                    // A card may be shipped with such a line for the boards that do read it.
                    boolean elsewhere =
                            key.boards().isEvery() || !key.boards().ranges().isEmpty();
                    String rule = key.resets() || !elsewhere ? "key-ignored" : "key-without-effect";
                    lines(each)
                            .forEach(line -> remarks.add(Remark.on(
                                    board,
                                    rule,
                                    Places.of(line),
                                    line.setBy() + "=" + line.written() + " does nothing on these boards.")));
                } else if (!key.published()) {
                    lines(each)
                            .forEach(line -> remarks.add(Remark.on(
                                    board,
                                    "key-not-published",
                                    Places.of(line),
                                    line.setBy() + " is no key that is published.")));
                }
            }
        }
        return remarks;
    }

    private static Stream<Candidate> lines(Effective each) {
        return Stream.of(List.of(each.chosen()), each.otherwise(), each.shadowed())
                .flatMap(List::stream);
    }
}
