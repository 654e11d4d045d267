package bootmend.fat.check;

import bootmend.fat.ChainEnding;
import bootmend.fat.FatEntry;
import bootmend.fat.FatTable;
import bootmend.fat.Geometry;
import java.io.IOException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.function.LongConsumer;

/**
 * Which clusters belong to a chain, and which to two; each cluster is stepped on once however the chains are tangled.
 *
 * <p>Memory: two bits a cluster.
 */
final class ClusterMap {

    private final Geometry geometry;
    private final FatTable table;
    private final BitSet used = new BitSet();
    private final BitSet shared = new BitSet();

    ClusterMap(Geometry geometry, FatTable table) {
        this.geometry = geometry;
        this.table = table;
    }

    /** Follows the chain from {@code first} and claims its clusters, up to the first that another chain has. */
    ChainCheck claim(long first) throws IOException {
        if (first == 0) {
            return new ChainCheck(0, 0, 0, ChainEnding.COMPLETE, 0);
        }
        long cluster = first;
        long last = 0;
        int length = 0;
        ChainEnding ending = null;
        while (ending == null) {
            ending = obstacle(cluster);
            if (ending == null) {
                used.set((int) cluster);
                length++;
                last = cluster;
                if (table.entry(cluster) instanceof FatEntry.Next next) {
                    cluster = next.cluster();
                } else {
                    ending = ChainEnding.COMPLETE;
                }
            }
        }
        ChainCheck check = new ChainCheck(first, length, last, ending, ending == ChainEnding.COMPLETE ? 0 : cluster);
        return check.crosses() ? crossing(check) : check;
    }

    /** Whether a chain met itself rather than another; only one that met something is gone over again. */
    private ChainCheck crossing(ChainCheck check) throws IOException {
        boolean[] own = new boolean[1];
        visit(check, check.length(), cluster -> own[0] |= cluster == check.obstacle());
        if (own[0]) {
            return new ChainCheck(check.first(), check.length(), check.last(), ChainEnding.LOOPS, check.obstacle());
        }
        shared.set((int) check.obstacle());
        return check;
    }

    private ChainEnding obstacle(long cluster) throws IOException {
        if (!geometry.hasCluster(cluster)) {
            return ChainEnding.OUTSIDE;
        }
        FatEntry entry = table.entry(cluster);
        if (entry instanceof FatEntry.Free) {
            return ChainEnding.FREE;
        }
        if (entry instanceof FatEntry.Bad) {
            return ChainEnding.BAD;
        }
        return used.get((int) cluster) ? ChainEnding.CROSSES : null;
    }

    /** Calls {@code visitor} for the first clusters of a chain that was claimed, at most {@code most} of them. */
    void visit(ChainCheck chain, int most, LongConsumer visitor) throws IOException {
        long cluster = chain.first();
        int steps = Math.min(most, chain.length());
        for (int i = 0; i < steps; i++) {
            visitor.accept(cluster);
            cluster = table.raw(cluster);
        }
    }

    /** The clusters of a chain that was claimed from the {@code from}-th on, counted from 0, to before {@code to}. */
    List<Long> clusters(ChainCheck chain, int from, int to) throws IOException {
        List<Long> list = new ArrayList<>();
        int[] at = new int[1];
        visit(chain, to, cluster -> {
            if (at[0]++ >= from) {
                list.add(cluster);
            }
        });
        return list;
    }

    /** The clusters in which {@code chain} meets another chain; empty for a healthy one. */
    List<Long> sharedOf(ChainCheck chain) throws IOException {
        List<Long> list = new ArrayList<>();
        if (chain.crosses()) {
            list.add(chain.obstacle());
        }
        if (!shared.isEmpty()) {
            visit(chain, chain.length(), cluster -> {
                if (shared.get((int) cluster)) {
                    list.add(cluster);
                }
            });
        }
        return list;
    }

    boolean isUsed(long cluster) {
        return used.get((int) cluster);
    }
}
