package bootmend.fat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads a folder slot by slot up to its end mark, a few kilobytes at a time. */
public final class DirectoryReader {

    /** A folder holds at most 65536 slots; source: "FAT: General Overview", "FAT Directory Structure". */
    public static final long MAX_BYTES = 65536L * Geometry.SLOT_BYTES;

    private static final int PIECE = 4096;
    /** The slots for {@code .} and {@code ..}, first in every folder but the root. */
    private static final int DOTS = 2;

    private final VolumeBytes volume;
    private final Geometry geometry;
    private final List<DirectoryEntry> entries = new ArrayList<>();
    private final List<String> warnings = new ArrayList<>();
    private final LongNameCollector longName = new LongNameCollector();
    private final DeletedNames deletedNames = new DeletedNames();
    private final List<DeletedEntry> deleted = new ArrayList<>();
    private String label;
    private final List<Long> orphans = new ArrayList<>();
    private final List<Slot> firstSlots = new ArrayList<>();
    private boolean broken;

    public DirectoryReader(VolumeBytes volume, Geometry geometry) {
        this.volume = volume;
        this.geometry = geometry;
    }

    /** The fixed root folder of FAT12 and FAT16. */
    Directory readFixedRoot() throws IOException {
        read(geometry.rootStart(), geometry.rootLength());
        return result();
    }

    /** A folder that is a chain of clusters, which is followed only as far as the end mark. */
    Directory readChain(FatTable table, long first) throws IOException {
        long limit = Math.max(1, MAX_BYTES / geometry.bytesPerCluster());
        ChainWalk walk = new ChainWalk(geometry, table, first, limit);
        while (walk.ending() == null) {
            List<Long> run = walk.nextRun(PIECE / geometry.bytesPerCluster());
            if (read(geometry.clusterStart(run.get(0)), (long) run.size() * geometry.bytesPerCluster())) {
                return result();
            }
        }
        if (walk.ending() != ChainEnding.COMPLETE) {
            broken = true;
            warnings.add("the folder's cluster chain " + walk.ending().words() + "; what it lists may be incomplete");
        }
        return result();
    }

    /** Reads slots in {@code length} bytes from {@code start}; returns whether the end mark stood there. */
    public boolean read(long start, long length) throws IOException {
        for (long done = 0; done < length; done += PIECE) {
            int n = (int) Math.min(PIECE, length - done);
            byte[] piece = volume.read(start + done, n);
            for (int at = 0; at + Geometry.SLOT_BYTES <= n; at += Geometry.SLOT_BYTES) {
                Slot slot = Slot.at(start + done + at, piece, at);
                if (slot.isEnd()) {
                    return true;
                }
                if (firstSlots.size() < DOTS) {
                    firstSlots.add(slot);
                }
                take(slot);
            }
        }
        return false;
    }

    private void take(Slot slot) {
        if (slot.isDeleted()) {
            drop(longName.drop());
            deletedNames.add(slot, geometry.type()).ifPresent(deleted::add);
            return;
        }
        deletedNames.drop();
        if (slot.isLongName()) {
            drop(longName.add(slot));
        } else if (slot.isLabel()) {
            drop(longName.drop());
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
        List<Slot> gathered = longName.drop();
        drop(named ? List.of() : gathered);
        if (!slot.isDot()) {
            boolean folder = (slot.attributes() & Slot.ATTRIBUTE_FOLDER) != 0;
            entries.add(new DirectoryEntry(
                    name.orElseGet(shortName::display),
                    shortName.display(),
                    folder,
                    slot.attributes(),
                    slot.firstCluster(geometry.type()),
                    slot.size(),
                    slot.offset(),
                    slots,
                    slot.written()));
        }
    }

    private void drop(List<Slot> slots) {
        slots.forEach(slot -> orphans.add(slot.offset()));
    }

    /** Whether the folder's chain broke off before its end mark was read. */
    boolean wasBroken() {
        return broken;
    }

    /** Places of long-name slots that belong to no entry. */
    public List<Long> orphans() {
        return orphans;
    }

    /** Whether the folder begins with entries for itself and for its parent. */
    public boolean hasDots() {
        return firstSlots.size() == DOTS
                && firstSlots.get(0).isDot(".")
                && firstSlots.get(1).isDot("..");
    }

    /** Whether these two, which must be there, lead where they should; a parent of 0 is the root. */
    public boolean dotsLeadTo(long own, long parent) {
        long up = firstSlots.get(1).firstCluster(geometry.type());
        return firstSlots.get(0).firstCluster(geometry.type()) == own
                && (up == parent || parent == 0 && up == geometry.rootCluster());
    }

    /** What was read so far. */
    public Directory result() {
        drop(longName.drop());
        if (!orphans.isEmpty()) {
            warnings.add(orphans.size() + " long-name slots belong to no file");
        }
        return new Directory(entries, Optional.ofNullable(label), deleted, warnings);
    }
}
