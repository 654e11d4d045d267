package bootmend.fat.check;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Finds out which files share clusters with which. */
final class CrossLinks {

    /** More names than these help nobody. */
    private static final int MOST_NAMED = 3;

    private final ClusterMap clusters;
    private final ChainCheck root;
    private final List<TreeFile> files;

    CrossLinks(ClusterMap clusters, ChainCheck root, List<TreeFile> files) {
        this.clusters = clusters;
        this.root = root;
        this.files = files;
    }

    /** The same files, each with the names of some that it shares clusters with. */
    List<TreeFile> named() throws IOException {
        Map<Long, List<String>> meetings = new HashMap<>();
        List<List<Long>> shared = new ArrayList<>();
        meet(meetings, clusters.sharedOf(root), Tree.ROOT);
        for (TreeFile file : files) {
            List<Long> own = clusters.sharedOf(file.chain());
            meet(meetings, own, file.path());
            shared.add(own);
        }
        List<TreeFile> named = new ArrayList<>();
        for (int i = 0; i < files.size(); i++) {
            TreeFile file = files.get(i);
            named.add(shared.get(i).isEmpty() ? file : file.sharingWith(others(meetings, shared.get(i), file.path())));
        }
        return named;
    }

    private static void meet(Map<Long, List<String>> meetings, List<Long> shared, String path) {
        for (long cluster : shared) {
            List<String> paths = meetings.computeIfAbsent(cluster, none -> new ArrayList<>());
            // One over what is named, so that each of them still finds others than itself.
            if (paths.size() <= MOST_NAMED) {
                paths.add(path);
            }
        }
    }

    private static List<String> others(Map<Long, List<String>> meetings, List<Long> shared, String path) {
        Set<String> others = new LinkedHashSet<>();
        for (long cluster : shared) {
            for (String other : meetings.get(cluster)) {
                if (others.size() < MOST_NAMED && !other.equals(path)) {
                    others.add(other);
                }
            }
        }
        return others.isEmpty() ? List.of("another of the same name") : List.copyOf(others);
    }
}
