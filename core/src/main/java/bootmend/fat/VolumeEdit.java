package bootmend.fat;

import bootmend.device.OverlayDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Changes to a volume that are worked out sector by sector and written nowhere: each step gives the sectors it changes,
 * with their content before and after.
 *
 * <p>Only the bits that a change needs differ: FAT12 neighbours, FAT32's reserved bits and each FAT copy's other
 * entries stay as that copy has them.
 */
public final class VolumeEdit {

    private static final int ATTRIBUTES = 11;
    private static final int CASE_FLAGS = 12;
    private static final int CREATION_TIME = 14;
    private static final int CREATION_DATE = 16;
    private static final int ACCESS_DATE = 18;
    private static final int FIRST_CLUSTER_HIGH = 20;
    private static final int WRITE_TIME = 22;
    private static final int WRITE_DATE = 24;
    private static final int FIRST_CLUSTER_LOW = 26;
    private static final int SIZE = 28;
    /** What a system sets on a file that was written since it was last backed up. */
    public static final byte ARCHIVE = 0x20;

    /** The attribute of a folder. */
    public static final byte FOLDER = Slot.ATTRIBUTE_FOLDER;

    /** A folder has at most 65536 slots, of which the smallest cluster holds 16. */
    private static final long MOST_FOLDER = 4096;

    private final VolumeBytes volume;
    private final Geometry geometry;
    private final List<Integer> copies;
    private final Map<Long, byte[]> before = new TreeMap<>();
    private final Map<Long, byte[]> after = new TreeMap<>();
    private final Map<Long, SectorKind> kinds = new TreeMap<>();
    private final Set<Long> taken = new HashSet<>();

    public VolumeEdit(FatVolume volume) {
        this.volume = volume.bytes();
        this.geometry = volume.geometry();
        this.copies = volume.copies();
    }

    /** The sectors changed since the last step, in the order they lie; the next step builds on them. */
    public List<SectorChange> takeStep() {
        List<SectorChange> step = new ArrayList<>();
        for (Map.Entry<Long, SectorKind> sector : kinds.entrySet()) {
            byte[] old = before.get(sector.getKey());
            byte[] changed = after.get(sector.getKey());
            if (!Arrays.equals(old, changed)) {
                step.add(new SectorChange(sector.getValue(), sector.getKey(), old, changed.clone()));
                before.put(sector.getKey(), changed.clone());
            }
        }
        kinds.clear();
        return step;
    }

    /**
     * Takes {@code count} free clusters, side by side where there is room; empty where the volume has fewer.
     *
     * @param after where to start looking when FSInfo gives no hint
     */
    public Optional<List<Long>> takeFree(int count, long after) throws IOException {
        Optional<FsInfo> info = FsInfo.read(volume, geometry);
        long hint = info.filter(i -> i.knowsNextFree(geometry))
                .map(FsInfo::nextFree)
                .orElse(after + 1);
        Optional<List<Long>> found = new FreeClusters(volume, geometry, taken).find(count, hint);
        found.ifPresent(taken::addAll);
        return found;
    }

    /** The clusters of {@code file}, in order. */
    public List<Long> chainOf(DirectoryEntry file) throws IOException {
        long most = Math.max(1, geometry.clustersFor(file.size()));
        for (int copy : copies) {
            ClusterChain chain = new FatTable(volume, geometry, copy).chain(file.firstCluster(), most);
            if (chain.isComplete()) {
                return chain.clusters();
            }
        }
        throw new BadVolumeException("the cluster chain of " + file.name() + " is damaged in every FAT copy");
    }

    /**
     * Whether something else on the volume leads into {@code file}'s clusters too: a second entry of the table, or
     * another entry of the root folder. Then releasing them would take them from under it.
     */
    public boolean isShared(FatVolume of, DirectoryEntry file, List<Long> chain) throws IOException {
        Set<Long> clusters = new HashSet<>(chain);
        boolean sharedStart = of.root().entries().stream()
                .anyMatch(other -> other.offset() != file.offset() && clusters.contains(other.firstCluster()));
        if (sharedStart || chain.isEmpty()) {
            return sharedStart;
        }
        Map<Long, Integer> leads = new TreeMap<>();
        new FatScan(volume, geometry, geometry.fatsInUse().get(0))
                .visit(Geometry.FIRST_CLUSTER, geometry.clusterEnd(), (cluster, raw) -> {
                    if (clusters.contains(raw)) {
                        leads.merge(raw, 1, Integer::sum);
                    }
                    return true;
                });
        return leads.containsKey(file.firstCluster()) || leads.values().stream().anyMatch(count -> count > 1);
    }

    /** Writes {@code content} into {@code clusters}, whole sectors with zeros behind its end. */
    public void putData(List<Long> clusters, byte[] content) throws IOException {
        int done = 0;
        for (long cluster : clusters) {
            long start = geometry.clusterStart(cluster);
            for (int s = 0; s < geometry.sectorsPerCluster() && done < content.length; s++) {
                byte[] sector = sector(SectorKind.DATA, start + (long) s * geometry.bytesPerSector());
                Arrays.fill(sector, (byte) 0);
                int n = Math.min(sector.length, content.length - done);
                System.arraycopy(content, done, sector, 0, n);
                done += n;
            }
        }
    }

    /** Links {@code clusters} to a chain in every FAT copy in use. */
    public void link(List<Long> clusters) throws IOException {
        for (int i = 0; i < clusters.size(); i++) {
            boolean last = i == clusters.size() - 1;
            putEntry(clusters.get(i), last ? geometry.type().endMark() : clusters.get(i + 1));
        }
    }

    /** Marks {@code clusters} free in every FAT copy in use. */
    public void free(List<Long> clusters) throws IOException {
        for (long cluster : clusters) {
            putEntry(cluster, 0);
        }
    }

    /** Points a file's entry at other content. */
    public void putEntry(DirectoryEntry file, long firstCluster, long size, LocalDateTime written) throws IOException {
        ByteBuffer slot = slot(file.offset());
        putFirstCluster(slot, firstCluster);
        slot.putInt(SIZE, (int) size);
        slot.putShort(WRITE_TIME, FatTime.time(written));
        slot.putShort(WRITE_DATE, FatTime.date(written));
    }

    /** Points a file's entry at another chain or size and leaves its times as they are. */
    public void putChain(DirectoryEntry file, long firstCluster, long size) throws IOException {
        ByteBuffer slot = slot(file.offset());
        putFirstCluster(slot, firstCluster);
        slot.putInt(SIZE, (int) size);
    }

    /**
     * Gives a file an 8.3 name of ASCII letters that is shown in lower case, such as {@code config.txt}; the slots of its
     * long name are left to {@link #deleteLongName}.
     */
    public void putLowerCaseName(DirectoryEntry file, String name) throws IOException {
        slot(file.offset()).put(0, ShortName.stored(name)).put(CASE_FLAGS, ShortName.ALL_LOWER);
    }

    /** The volume as the steps so far, and what was changed since, would leave it. */
    public FatVolume now() throws IOException {
        return FatVolume.open(new OverlayDevice(volume.device(), after));
    }

    /** Fills {@code cluster} with empty slots, to be put behind a folder by {@link #growFolder} or to begin a new one. */
    public void putEmptySlots(long cluster) throws IOException {
        for (int s = 0; s < geometry.sectorsPerCluster(); s++) {
            long offset = geometry.clusterStart(cluster) + (long) s * geometry.bytesPerSector();
            Arrays.fill(sector(SectorKind.DIRECTORY, offset), (byte) 0);
        }
    }

    /** Puts the entries that every folder but the root begins with into an empty cluster; a parent of 0 is the root. */
    public void putDots(long cluster, long parent, LocalDateTime written) throws IOException {
        long start = geometry.clusterStart(cluster);
        putDot(start, ".", cluster, written);
        putDot(start + Geometry.SLOT_BYTES, "..", parent, written);
    }

    private void putDot(long offset, String dots, long leadsTo, LocalDateTime written) throws IOException {
        byte[] name = String.format("%-11s", dots).getBytes(StandardCharsets.US_ASCII);
        putSlot(offset, name, 0, (byte) Slot.ATTRIBUTE_FOLDER, leadsTo, 0, written);
    }

    /** Puts {@code cluster} behind the last one of the folder that begins at {@code first}. */
    public void growFolder(long first, long cluster) throws IOException {
        ClusterChain chain = folderChain(first);
        putEntry(chain.clusters().get(chain.clusters().size() - 1), cluster);
        putEntry(cluster, geometry.type().endMark());
    }

    private ClusterChain folderChain(long first) throws IOException {
        VolumeBytes bytes = now().bytes();
        ClusterChain chain = new FatTable(bytes, geometry, copies.get(0)).chain(first, MOST_FOLDER);
        if (!chain.isComplete()) {
            throw new BadVolumeException(
                    "the folder's cluster chain " + chain.ending().words());
        }
        return chain;
    }

    /** Whether a folder that begins at {@code first} can be given another cluster. */
    public boolean canGrow(long first) throws IOException {
        return first != 0
                && (folderChain(first).clusters().size() + 1L) * geometry.bytesPerCluster()
                        <= DirectoryReader.MAX_BYTES;
    }

    /** Where a new entry goes, and what must be done first; worked out by {@link #placeFor}. */
    public final class NewEntry {

        private final SlotPlace place;
        private final NewName name;
        private final long folder;

        private NewEntry(SlotPlace place, NewName name, long folder) {
            this.place = place;
            this.name = name;
            this.folder = folder;
        }

        /** Whether the folder must get another cluster, by {@link #growFolder}, before {@link #pad} is called. */
        public boolean needsCluster() {
            return place.first().isEmpty();
        }

        /** First cluster of the folder; 0 for a root folder that has no clusters. */
        public long folder() {
            return folder;
        }

        /** Makes what lies past the folder's end mark empty; nothing there counts yet. */
        public void clear() throws IOException {
            for (long offset : place.clear()) {
                Arrays.fill(sector(SectorKind.DIRECTORY, offset), (byte) 0);
            }
        }

        /** Lets the folder reach to where the entry goes; what lies there must be empty by then. */
        public void pad() throws IOException {
            deleteSlots(place.padding());
        }

        /**
         * Writes the entry with its long name, all of it in one sector.
         *
         * @param cluster the folder's new cluster, where it needed one
         */
        public void put(long cluster, byte attributes, long firstCluster, long size, LocalDateTime written)
                throws IOException {
            long at = place.first().isPresent() ? place.first().getAsLong() : geometry.clusterStart(cluster);
            for (byte[] slot : name.longSlots()) {
                slot(at).put(0, slot);
                at += Geometry.SLOT_BYTES;
            }
            putSlot(at, name.stored(), name.caseFlags(), attributes, firstCluster, size, written);
            if (place.endMark().isPresent()) {
                slot(place.endMark().getAsLong()).put(0, (byte) 0);
            }
        }
    }

    /**
     * Where a new entry of that name goes in {@code folder}; its bytes stay as they are.
     *
     * @throws BadVolumeException where the name is none, or its slots do not fit into one sector
     */
    public NewEntry placeFor(DirectoryEntry folder, String name) throws IOException {
        FatVolume now = now();
        boolean root = folder.offset() == 0;
        Directory listed = root ? now.root() : now.list(folder);
        Set<String> taken = listed.entries().stream()
                .map(entry -> entry.shortName().toUpperCase(Locale.ROOT))
                .collect(Collectors.toSet());
        NewName slots = NewName.of(name, taken);
        if (slots.slots() * Geometry.SLOT_BYTES > geometry.bytesPerSector()) {
            throw new BadVolumeException("the name " + name + " is too long to be written in one go");
        }
        boolean fixed = root && geometry.type() != FatType.FAT32;
        SlotPlace place = SlotPlace.find(
                now.bytes(), geometry, fixed ? fixedRoot() : sectorsOf(folder.firstCluster()), slots.slots());
        return new NewEntry(place, slots, fixed ? 0 : folder.firstCluster());
    }

    private List<Long> fixedRoot() {
        List<Long> sectors = new ArrayList<>();
        for (long at = 0; at + geometry.bytesPerSector() <= geometry.rootLength(); at += geometry.bytesPerSector()) {
            sectors.add(geometry.rootStart() + at);
        }
        return sectors;
    }

    private List<Long> sectorsOf(long first) throws IOException {
        List<Long> sectors = new ArrayList<>();
        for (long cluster : folderChain(first).clusters()) {
            for (int s = 0; s < geometry.sectorsPerCluster(); s++) {
                sectors.add(geometry.clusterStart(cluster) + (long) s * geometry.bytesPerSector());
            }
        }
        return sectors;
    }

    private void putSlot(
            long offset,
            byte[] stored,
            int caseFlags,
            byte attributes,
            long firstCluster,
            long size,
            LocalDateTime written)
            throws IOException {
        ByteBuffer slot = slot(offset);
        slot.put(0, new byte[Geometry.SLOT_BYTES]);
        slot.put(0, stored).put(ATTRIBUTES, attributes).put(CASE_FLAGS, (byte) caseFlags);
        slot.putShort(CREATION_TIME, FatTime.time(written)).putShort(CREATION_DATE, FatTime.date(written));
        slot.putShort(ACCESS_DATE, FatTime.date(written));
        slot.putShort(WRITE_TIME, FatTime.time(written)).putShort(WRITE_DATE, FatTime.date(written));
        putFirstCluster(slot, firstCluster);
        slot.putInt(SIZE, (int) size);
    }

    /** Marks a file's entry deleted; the slots of its long name are left to {@link #deleteLongName}. */
    public void deleteEntry(DirectoryEntry file) throws IOException {
        deleteSlots(List.of(file.offset()));
    }

    /** Marks the slots of a file's long name deleted. */
    public void deleteLongName(DirectoryEntry file) throws IOException {
        deleteSlots(file.longNameOffsets());
    }

    public void deleteSlots(List<Long> offsets) throws IOException {
        for (long offset : offsets) {
            slot(offset).put(0, Slot.DELETED);
        }
    }

    /** Puts a whole sector. */
    public void putSector(SectorKind kind, long offset, byte[] content) throws IOException {
        System.arraycopy(content, 0, sector(kind, offset), 0, geometry.bytesPerSector());
    }

    /** Sets or clears bits of one byte of the boot sector. */
    public void putBootFlag(int offset, int bits, boolean set) throws IOException {
        byte[] sector = sector(SectorKind.BOOT_SECTOR, 0);
        sector[offset] = (byte) (set ? sector[offset] | bits : sector[offset] & ~bits);
    }

    /** Puts an entry's value in every FAT copy in use; {@code entry} may also be 0 or 1, which belong to no cluster. */
    public void putMark(long entry, long value) throws IOException {
        putEntry(entry, value);
    }

    /** Brings FSInfo's hints up to date, each only where it was valid; {@code lastTaken} 0 leaves the second alone. */
    public void adjustFsInfo(long freed, long lastTaken) throws IOException {
        if (FsInfo.read(volume, geometry).isEmpty()) {
            return;
        }
        byte[] bytes = sector(SectorKind.FS_INFO, FsInfo.offset(geometry));
        Optional<FsInfo> info = FsInfo.parse(bytes);
        ByteBuffer sector = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
        long count = info.get().freeCount() + freed;
        if (info.get().knowsFreeCount(geometry) && count >= 0 && count <= geometry.clusterCount()) {
            sector.putInt(FsInfo.FREE_COUNT_OFFSET, (int) count);
        }
        if (info.get().knowsNextFree(geometry) && lastTaken != 0) {
            sector.putInt(FsInfo.NEXT_FREE_OFFSET, (int) lastTaken);
        }
    }

    /** Puts FSInfo's values, and its signatures where they are gone. */
    public void putFsInfo(FsInfo info) throws IOException {
        info.writeTo(sector(SectorKind.FS_INFO, FsInfo.offset(geometry)));
    }

    private ByteBuffer slot(long offset) throws IOException {
        long inSector = offset % geometry.bytesPerSector();
        byte[] sector = sector(SectorKind.DIRECTORY, offset - inSector);
        return ByteBuffer.wrap(sector, (int) inSector, Geometry.SLOT_BYTES)
                .slice()
                .order(ByteOrder.LITTLE_ENDIAN);
    }

    private void putFirstCluster(ByteBuffer slot, long firstCluster) {
        slot.putShort(FIRST_CLUSTER_LOW, (short) firstCluster);
        if (geometry.type() == FatType.FAT32) {
            slot.putShort(FIRST_CLUSTER_HIGH, (short) (firstCluster >>> 16));
        }
    }

    private void putEntry(long cluster, long value) throws IOException {
        for (int copy : geometry.fatsInUse()) {
            EntryPlace place = EntryPlace.of(geometry, copy, cluster);
            long raw = 0;
            for (int i = 0; i < place.bytes(); i++) {
                raw |= (fatByte(place.offset() + i) & 0xFFL) << (8 * i);
            }
            long changed = place.with(raw, value);
            for (int i = 0; i < place.bytes(); i++) {
                putFatByte(place.offset() + i, (byte) (changed >>> (8 * i)));
            }
        }
    }

    private byte fatByte(long offset) throws IOException {
        long inSector = offset % geometry.bytesPerSector();
        return sector(SectorKind.FAT, offset - inSector)[(int) inSector];
    }

    private void putFatByte(long offset, byte value) throws IOException {
        long inSector = offset % geometry.bytesPerSector();
        sector(SectorKind.FAT, offset - inSector)[(int) inSector] = value;
    }

    /** The sector at {@code offset} as changed so far, to be changed further. */
    private byte[] sector(SectorKind kind, long offset) throws IOException {
        if (!after.containsKey(offset)) {
            byte[] now = volume.read(offset, geometry.bytesPerSector());
            before.put(offset, now);
            after.put(offset, now.clone());
        }
        kinds.put(offset, kind);
        return after.get(offset);
    }
}
