package bootmend.fat;

import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * A slot of the root folder that a new entry can take.
 *
 * @param offset its place on the volume
 * @param next the slot behind it, where it was the end mark; empty where it was a deleted slot or the last of all
 */
record RootSlot(long offset, Optional<Long> next) {

    private static final long MAX_SLOTS = 65_536;

    /** The first slot that is deleted or marks the end; empty where the folder is full as it is. */
    static Optional<RootSlot> find(VolumeBytes volume, Geometry geometry, FatTable table) throws IOException {
        Search search = new Search(volume);
        if (geometry.type() != FatType.FAT32) {
            search.look(geometry.rootStart(), geometry.rootLength());
            return search.result();
        }
        long limit = Math.max(1, MAX_SLOTS * Geometry.SLOT_BYTES / geometry.bytesPerCluster());
        ChainWalk walk = new ChainWalk(geometry, table, geometry.rootCluster(), limit);
        while (walk.ending() == null && !search.isDone()) {
            List<Long> run = walk.nextRun(1);
            search.look(geometry.clusterStart(run.get(0)), geometry.bytesPerCluster());
        }
        return search.result();
    }

    /** Looks slot by slot; an end mark needs one slot more. */
    private static final class Search {

        private final VolumeBytes volume;
        private long end = -1;
        private RootSlot found;

        Search(VolumeBytes volume) {
            this.volume = volume;
        }

        void look(long start, long length) throws IOException {
            byte[] slots = volume.read(start, Math.toIntExact(length));
            for (int at = 0; at + Geometry.SLOT_BYTES <= length && found == null; at += Geometry.SLOT_BYTES) {
                if (end >= 0) {
                    found = new RootSlot(end, Optional.of(start + at));
                } else if (slots[at] == Slot.DELETED) {
                    found = new RootSlot(start + at, Optional.empty());
                } else if (slots[at] == 0) {
                    end = start + at;
                }
            }
        }

        boolean isDone() {
            return found != null;
        }

        Optional<RootSlot> result() {
            if (found == null && end >= 0) {
                return Optional.of(new RootSlot(end, Optional.empty()));
            }
            return Optional.ofNullable(found);
        }
    }
}
