package bootmend.fat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Finds clusters that every FAT copy in use marks free, side by side where it can. */
final class FreeClusters {

    private final VolumeBytes volume;
    private final Geometry geometry;
    private final List<FatTable> others = new ArrayList<>();
    private final FatScan scan;
    private final Set<Long> taken;

    /** @param taken clusters that are free on the volume but already promised to something */
    FreeClusters(VolumeBytes volume, Geometry geometry, Set<Long> taken) {
        this.taken = Set.copyOf(taken);
        this.volume = volume;
        this.geometry = geometry;
        List<Integer> copies = geometry.fatsInUse();
        this.scan = new FatScan(volume, geometry, copies.get(0));
        copies.stream().skip(1).forEach(copy -> others.add(new FatTable(volume, geometry, copy)));
    }

    /** {@code count} free clusters looked for from {@code hint} on and round; empty where there are fewer. */
    Optional<List<Long>> find(int count, long hint) throws IOException {
        long start = geometry.hasCluster(hint) ? hint : Geometry.FIRST_CLUSTER;
        Search search = new Search(count);
        long dataEnd = readableEnd();
        boolean goOn = scan.visit(Math.min(start, dataEnd), dataEnd, search);
        if (goOn) {
            search.run.clear();
            scan.visit(Geometry.FIRST_CLUSTER, Math.min(start, dataEnd), search);
        }
        return search.result();
    }

    /** One past the last cluster whose bytes are there, which differs on an image that was cut off. */
    private long readableEnd() throws IOException {
        long whole = Math.max(0, volume.size() - geometry.dataStart()) / geometry.bytesPerCluster();
        return Math.min(geometry.clusterEnd(), Geometry.FIRST_CLUSTER + whole);
    }

    private final class Search implements FatScan.Visitor {

        private final int count;
        private final List<Long> scattered = new ArrayList<>();
        private final List<Long> run = new ArrayList<>();

        Search(int count) {
            this.count = count;
        }

        @Override
        public boolean entry(long cluster, long raw) throws IOException {
            if (raw != 0 || taken.contains(cluster) || !freeInOthers(cluster)) {
                run.clear();
                return true;
            }
            if (scattered.size() < count) {
                scattered.add(cluster);
            }
            run.add(cluster);
            return run.size() < count;
        }

        Optional<List<Long>> result() {
            if (run.size() == count) {
                return Optional.of(List.copyOf(run));
            }
            return scattered.size() == count ? Optional.of(List.copyOf(scattered)) : Optional.empty();
        }
    }

    private boolean freeInOthers(long cluster) throws IOException {
        for (FatTable table : others) {
            if (table.raw(cluster) != 0) {
                return false;
            }
        }
        return true;
    }
}
