package bootmend.fat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.function.LongConsumer;

/**
 * Which clusters belong to a chain, and which to two; each cluster is stepped on once however the chains are tangled.
 *
 * <p>Memory: three bits a cluster.
 */
final class ClusterMap {

    private final Geometry geometry;
    private final FatTable table;
    private final BitSet used = new BitSet();
    private final BitSet shared = new BitSet();
    private final BitSet own = new BitSet();

    ClusterMap(Geometry geometry, FatTable table) {
        this.geometry = geometry;
        this.table = table;
    }

    /** Follows the chain from {@code first} and claims its clusters, up to the first that another chain has. */
    ChainCheck claim(long first) throws IOException {
        if (first == 0) {
            return new ChainCheck(0, 0, 0, ClusterChain.Ending.COMPLETE, 0);
        }
        long cluster = first;
        long last = 0;
        int length = 0;
        ClusterChain.Ending ending = null;
        while (ending == null) {
            ending = obstacle(cluster);
            if (ending == null) {
                used.set((int) cluster);
                own.set((int) cluster);
                length++;
                last = cluster;
                if (table.entry(cluster) instanceof FatEntry.Next next) {
                    cluster = next.cluster();
                } else {
                    ending = ClusterChain.Ending.COMPLETE;
                }
            }
        }
        ChainCheck check = new ChainCheck(first, length, last, ending,
                ending == ClusterChain.Ending.COMPLETE ? 0 : cluster);
        visit(check, length, mine -> own.clear((int) mine));
        return check;
    }

    private ClusterChain.Ending obstacle(long cluster) throws IOException {
        if (!geometry.hasCluster(cluster)) {
            return ClusterChain.Ending.OUTSIDE;
        }
        if (own.get((int) cluster)) {
            return ClusterChain.Ending.LOOPS;
        }
        FatEntry entry = table.entry(cluster);
        if (entry instanceof FatEntry.Free) {
            return ClusterChain.Ending.FREE;
        }
        if (entry instanceof FatEntry.Bad) {
            return ClusterChain.Ending.BAD;
        }
        if (used.get((int) cluster)) {
            shared.set((int) cluster);
            return ClusterChain.Ending.CROSSES;
        }
        return null;
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
