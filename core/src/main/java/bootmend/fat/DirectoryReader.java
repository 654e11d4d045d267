package bootmend.fat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads a folder slot by slot up to its end mark, a few kilobytes at a time. */
final class DirectoryReader {

    /** A folder holds at most 65536 slots; source: "FAT: General Overview", "FAT Directory Structure". */
    static final long MAX_BYTES = 65536L * Geometry.SLOT_BYTES;
    private static final int PIECE = 4096;

    private final VolumeBytes volume;
    private final Geometry geometry;
    private final List<DirectoryEntry> entries = new ArrayList<>();
    private final List<String> doubts = new ArrayList<>();
    private final LongNameCollector longName = new LongNameCollector();
    private String label;
    private int orphans;

    DirectoryReader(VolumeBytes volume, Geometry geometry) {
        this.volume = volume;
        this.geometry = geometry;
    }

    /** The fixed root folder of FAT12 and FAT16. */
    Directory readFixedRoot() throws IOException {
        readPieces(geometry.rootStart(), geometry.rootLength());
        return result();
    }

    /** A folder that is a chain of clusters, which is followed only as far as the end mark. */
    Directory readChain(FatTable table, long first) throws IOException {
        long limit = Math.max(1, MAX_BYTES / geometry.bytesPerCluster());
        ChainWalk walk = new ChainWalk(geometry, table, first, limit);
        while (walk.ending() == null) {
            List<Long> run = walk.nextRun(PIECE / geometry.bytesPerCluster());
            if (readPieces(geometry.clusterStart(run.get(0)), (long) run.size() * geometry.bytesPerCluster())) {
                return result();
            }
        }
        if (walk.ending() != ClusterChain.Ending.COMPLETE) {
            doubts.add("the folder's cluster chain " + walk.ending().words() + "; what it lists may be incomplete");
        }
        return result();
    }

    /** Reads slots in {@code length} bytes from {@code start}; returns whether the end mark stood there. */
    private boolean readPieces(long start, long length) throws IOException {
        for (long done = 0; done < length; done += PIECE) {
            int n = (int) Math.min(PIECE, length - done);
            byte[] piece = volume.read(start + done, n);
            for (int at = 0; at + Geometry.SLOT_BYTES <= n; at += Geometry.SLOT_BYTES) {
                Slot slot = Slot.at(start + done + at, piece, at);
                if (slot.isEnd()) {
                    return true;
                }
                take(slot);
            }
        }
        return false;
    }

    private void take(Slot slot) {
        if (slot.isDeleted()) {
            orphans += longName.drop().size();
        } else if (slot.isLongName()) {
            orphans += longName.add(slot).size();
        } else if (slot.isLabel()) {
            orphans += longName.drop().size();
            label = label == null ? labelText(slot) : label;
        } else {
            entry(slot);
        }
    }

    /** A label uses all eleven characters; there is no dot in it. */
    private static String labelText(Slot slot) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < ShortName.LENGTH; i++) {
            text.append((char) slot.u8(i));
        }
        return text.toString().stripTrailing();
    }

    private void entry(Slot slot) {
        ShortName shortName = slot.shortName();
        boolean named = longName.belongsTo(shortName);
        List<Long> slots = named ? longName.offsets() : List.of();
        Optional<String> name = named ? longName.name() : Optional.empty();
        int dropped = longName.drop().size();
        orphans += named ? 0 : dropped;
        if (!slot.isDot()) {
            boolean folder = (slot.attributes() & Slot.ATTRIBUTE_FOLDER) != 0;
            entries.add(new DirectoryEntry(name.orElseGet(shortName::display), shortName.display(), folder,
                    slot.attributes(), slot.firstCluster(geometry.type()), slot.size(), slot.offset(), slots));
        }
    }

    private Directory result() {
        orphans += longName.drop().size();
        if (orphans > 0) {
            doubts.add(orphans + " long-name slots belong to no file");
        }
        return new Directory(entries, Optional.ofNullable(label), doubts);
    }
}
