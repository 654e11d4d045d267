package bootmend.fat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The clusters of a file or folder in order, and how the chain ended. */
record ClusterChain(List<Long> clusters, Ending ending) {

    /** How following a chain came to its end. */
    enum Ending {
        /** An end mark, or no cluster at all for an empty file. */
        COMPLETE("ends as it should"),
        LOOPS("loops back into itself"),
        FREE("runs into a cluster that is marked free"),
        BAD("runs into a cluster that is marked bad"),
        OUTSIDE("points outside the volume"),
        /** Only a full look tells; whoever follows a single chain does not notice. */
        CROSSES("runs into the clusters of another file"),
        /** More clusters than were asked for; the rest was not followed. */
        LONGER("is longer than the file's size");

        private final String words;

        Ending(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    ClusterChain {
        clusters = List.copyOf(clusters);
    }

    boolean isComplete() {
        return ending == Ending.COMPLETE;
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
