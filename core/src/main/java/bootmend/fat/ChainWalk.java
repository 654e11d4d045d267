package bootmend.fat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Follows a cluster chain only as far as it is asked to, in runs of neighbouring clusters. */
final class ChainWalk {

    private final Geometry geometry;
    private final FatTable table;
    private final long limit;
    private final Set<Long> seen = new HashSet<>();
    private long next;
    private FatEntry nextEntry;
    private ChainEnding ending;

    /** @param limit clusters at most, which bounds both the steps and the memory */
    ChainWalk(Geometry geometry, FatTable table, long first, long limit) throws IOException {
        this.geometry = geometry;
        this.table = table;
        this.limit = limit;
        if (first == 0) {
            ending = ChainEnding.COMPLETE;
        } else {
            enter(first);
        }
    }

    /** The next clusters that lie side by side, at most {@code most} and at least one; empty at the chain's end. */
    List<Long> nextRun(int most) throws IOException {
        List<Long> run = new ArrayList<>();
        while (ending == null
                && run.size() < Math.max(1, most)
                && (run.isEmpty() || next == run.get(run.size() - 1) + 1)) {
            run.add(next);
            if (nextEntry instanceof FatEntry.Next link) {
                enter(link.cluster());
            } else {
                ending = ChainEnding.COMPLETE;
            }
        }
        return run;
    }

    /** How the chain ended; null while there is more of it. */
    ChainEnding ending() {
        return ending;
    }

    private void enter(long cluster) throws IOException {
        next = cluster;
        if (!geometry.hasCluster(cluster)) {
            ending = ChainEnding.OUTSIDE;
        } else if (!seen.add(cluster)) {
            ending = ChainEnding.LOOPS;
        } else if (seen.size() > limit) {
            ending = ChainEnding.LONGER;
        } else {
            nextEntry = table.entry(cluster);
            if (nextEntry instanceof FatEntry.Free) {
                ending = ChainEnding.FREE;
            } else if (nextEntry instanceof FatEntry.Bad) {
                ending = ChainEnding.BAD;
            }
        }
    }
}
