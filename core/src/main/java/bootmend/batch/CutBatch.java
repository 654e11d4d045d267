package bootmend.batch;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;

/**
 * A batch of changes that came to its end without all its cards, as its journal has it. Names of cards are absolute and
 * not yet safe to show.
 *
 * @param journal its file
 * @param what was done to each card, in a few words; not yet safe to show
 * @param done cards that had nothing left to do
 * @param failed cards that the change was refused on or failed on before it was begun
 * @param cut cards that the change was begun on and not seen to its end
 * @param notBegun cards that had no turn
 */
public record CutBatch(
        Path journal,
        Instant began,
        String what,
        List<String> done,
        List<String> failed,
        List<String> cut,
        List<String> notBegun) {

    public CutBatch {
        done = List.copyOf(done);
        failed = List.copyOf(failed);
        cut = List.copyOf(cut);
        notBegun = List.copyOf(notBegun);
    }

    /** How many cards it was for. */
    public int size() {
        return done.size() + failed.size() + cut.size() + notBegun.size();
    }
}
