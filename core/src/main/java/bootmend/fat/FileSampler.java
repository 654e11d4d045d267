package bootmend.fat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** Looks into a file without reading it whole: its head, the first and last cluster, and some between. */
public final class FileSampler {

    /** How many bytes of a file's head are kept. */
    public static final int HEAD = 4096;

    /** How many clusters of a file are looked at. */
    public static final int CLUSTERS = 8;

    /** How far a chain is followed. No source: a bound against hostile cards; 64 MiB in 512-byte clusters. */
    private static final long MOST_FOLLOWED = 131_072;

    private final FatVolume volume;

    public FileSampler(FatVolume volume) {
        this.volume = volume;
    }

    /** Looks into {@code file}, which is no folder. */
    public FileSample sample(DirectoryEntry file) throws IOException {
        FileContent head = volume.read(file, HEAD);
        List<String> doubts = new ArrayList<>(head.doubts());
        Geometry geometry = volume.geometry();
        long needed = geometry.clustersFor(file.size());
        List<Long> clusters = volume.table()
                .chain(file.firstCluster(), Math.min(needed, MOST_FOLLOWED))
                .clusters();
        if (clusters.size() < Math.min(needed, MOST_FOLLOWED) && doubts.isEmpty()) {
            doubts.add("only " + clusters.size() + " of its " + needed + " clusters could be followed");
        }
        List<Boolean> zero = new ArrayList<>();
        for (int index : chosen(clusters.size())) {
            long length = Math.min(geometry.bytesPerCluster(), file.size() - (long) index * geometry.bytesPerCluster());
            long start = geometry.clusterStart(clusters.get(index));
            if (start + length > volume.bytes().size()) {
                doubts.add("the card or image ends before the file does");
                break;
            }
            zero.add(isZero(volume.bytes().read(start, (int) length)));
        }
        return new FileSample(file.size(), head.bytes(), zero, doubts);
    }

    /** Indexes from 0 to {@code count - 1}, the first and the last among them. */
    private static Iterable<Integer> chosen(int count) {
        TreeSet<Integer> indexes = new TreeSet<>();
        for (int i = 0; i < CLUSTERS && count > 0; i++) {
            indexes.add((int) ((long) i * (count - 1) / (CLUSTERS - 1)));
        }
        return indexes;
    }

    private static boolean isZero(byte[] bytes) {
        for (byte each : bytes) {
            if (each != 0) {
                return false;
            }
        }
        return true;
    }
}
