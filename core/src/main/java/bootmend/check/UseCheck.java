package bootmend.check;

import bootmend.tuning.resolve.Candidate;
import bootmend.tuning.resolve.Effective;
import bootmend.tuning.resolve.EffectiveState;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Tuning keys that a board does nothing with. */
record UseCheck() implements Check {

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        for (BoardReading board : card.boards()) {
            board.resolution().effective().stream()
                    .filter(each -> each.state() == EffectiveState.IGNORED)
                    .flatMap(UseCheck::lines)
                    .forEach(line -> remarks.add(Remark.on(
                            board,
                            "key-ignored",
                            Places.of(line),
                            line.setBy() + "=" + line.written() + " does nothing on these boards.")));
        }
        return remarks;
    }

    private static Stream<Candidate> lines(Effective ignored) {
        return Stream.concat(Stream.of(ignored.chosen()), ignored.shadowed().stream());
    }
}
