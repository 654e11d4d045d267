package bootmend.fat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The clusters of a file or folder in order, and how the chain ended. */
record ClusterChain(List<Long> clusters, ChainEnding ending) {

    ClusterChain {
        clusters = List.copyOf(clusters);
    }

    boolean isComplete() {
        return ending == ChainEnding.COMPLETE;
    }

    /** Follows from {@code first}; {@code limit} bounds both the steps and the memory. */
    static ClusterChain follow(Geometry geometry, FatTable table, long first, long limit) throws IOException {
        ChainWalk walk = new ChainWalk(geometry, table, first, limit);
        List<Long> clusters = new ArrayList<>();
        while (walk.ending() == null) {
            clusters.addAll(walk.nextRun(Integer.MAX_VALUE));
        }
        return new ClusterChain(clusters, walk.ending());
    }
}
