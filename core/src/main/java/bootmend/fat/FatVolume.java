package bootmend.fat;

import de.waldheinz.fs.BlockDevice;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.Stream;

/** A FAT volume that is open for reading: its geometry, folders and files, read only as far as they are asked for. */
public final class FatVolume implements BootFiles {

    private static final int PIECE = 65536;
    /** How far a chain is followed for a file's bytes. No source: a bound against hostile cards. */
    private static final long MOST_FOLLOWED = 1 << 20;

    private final VolumeBytes bytes;
    private final Geometry geometry;
    private final FatCopies copies;
    private final List<String> remarks;
    private final List<String> warnings;
    private Directory root;

    private FatVolume(VolumeBytes bytes, Geometry geometry, byte[] bootSector, List<String> warnings)
            throws IOException {
        this.bytes = bytes;
        this.geometry = geometry;
        this.copies = FatCopies.choose(bytes, geometry, BootSector.media(bootSector));
        this.remarks = DirtyFlag.of(bootSector, geometry.type(), copies.head()).words();
        this.warnings =
                Stream.concat(warnings.stream(), copies.warnings().stream()).toList();
    }

    /**
     * Opens the volume on {@code device}, from the backup of its boot sector where the first is damaged.
     *
     * @throws BadVolumeException when there is no FAT volume
     */
    public static FatVolume open(BlockDevice device) throws IOException {
        VolumeBytes first = new VolumeBytes(device, BootSector.LENGTH);
        if (device.getSize() < BootSector.LENGTH) {
            throw new BadVolumeException("there is no room for a boot sector");
        }
        List<String> warnings = new ArrayList<>();
        byte[] sector = first.read(0, BootSector.LENGTH);
        Geometry geometry;
        try {
            geometry = BootSector.read(sector);
        } catch (BadVolumeException e) {
            BootBackup backup = BootBackup.find(first).orElseThrow(() -> e);
            geometry = backup.geometry();
            sector = backup.sector();
            warnings.add(e.getMessage() + "; its backup in sector " + BootBackup.SECTOR + " was read instead");
        }
        if (geometry.length() > device.getSize()) {
            warnings.add("the volume should have " + geometry.length() + " bytes, but only " + device.getSize()
                    + " are there; the card or image is cut off");
        }
        return new FatVolume(new VolumeBytes(device, geometry.bytesPerSector()), geometry, sector, warnings);
    }

    public Geometry geometry() {
        return geometry;
    }

    /** Sentences on how the volume was last put away; they cast no warning on what is read from it. */
    @Override
    public List<String> remarks() {
        return remarks;
    }

    /** Sentences on what was damaged in the volume's own description. */
    @Override
    public List<String> warnings() {
        return warnings;
    }

    /** The root folder, read once. */
    @Override
    public Directory root() throws IOException {
        if (root == null) {
            root = geometry.type() == FatType.FAT32
                    ? folder(geometry.rootCluster())
                    : new DirectoryReader(bytes, geometry).readFixedRoot();
        }
        return root;
    }

    /** What {@code folder} holds. */
    @Override
    public Directory list(DirectoryEntry folder) throws IOException {
        if (!folder.folder()) {
            throw new BadVolumeException(folder.name() + " is a file, not a folder");
        }
        return folder(folder.firstCluster());
    }

    /** A folder by the first FAT copy in which its chain is whole as far as it is read, else by the one that gives most. */
    private Directory folder(long first) throws IOException {
        Directory best = null;
        for (int copy : copies.order()) {
            DirectoryReader reader = new DirectoryReader(bytes, geometry);
            Directory read = reader.readChain(new FatTable(bytes, geometry, copy), first);
            if (!reader.wasBroken()) {
                return best == null
                        ? read
                        : read.withWarning("the folder's cluster chain is damaged in one FAT copy; it "
                                + "was followed in copy " + (copy + 1));
            }
            if (best == null || read.entries().size() > best.entries().size()) {
                best = read;
            }
        }
        return best;
    }

    @Override
    public FileBytes bytes(DirectoryEntry file) throws IOException {
        List<String> found = new ArrayList<>();
        long needed = geometry.clustersFor(file.size());
        long followed = Math.min(needed, MOST_FOLLOWED);
        ClusterChain chain = bestChain(file.firstCluster(), followed, needed > followed, found);
        if (chain.clusters().size() < needed && found.isEmpty()) {
            found.add("only the first " + followed + " of its " + needed + " clusters were followed");
        }
        return new FatFileBytes(bytes, geometry, chain.clusters(), file.size(), found);
    }

    @Override
    public WrittenTime times(DirectoryEntry entry) throws IOException {
        ByteBuffer slot =
                ByteBuffer.wrap(bytes.read(entry.offset(), Geometry.SLOT_BYTES)).order(ByteOrder.LITTLE_ENDIAN);
        return WrittenTime.of(slot.getShort(22), slot.getShort(24), slot.getShort(14), slot.getShort(16));
    }

    @Override
    public VolumeSpace space() throws IOException {
        return VolumeSpace.of(this);
    }

    /**
     * Reads {@code file}, at most {@code limit} bytes of it; a chain that is damaged in one FAT copy is followed in
     * another where that one is whole.
     */
    @Override
    public FileContent read(DirectoryEntry file, int limit) throws IOException {
        long wanted = Math.min(file.size(), limit);
        List<String> found = new ArrayList<>();
        ClusterChain chain = bestChain(file.firstCluster(), geometry.clustersFor(wanted), file.size() > limit, found);
        ByteArrayOutputStream content = new ByteArrayOutputStream((int) Math.min(wanted, PIECE));
        for (List<Long> run : runs(chain.clusters())) {
            long start = geometry.clusterStart(run.get(0));
            long length = Math.min((long) run.size() * geometry.bytesPerCluster(), wanted - content.size());
            long there = Math.min(length, Math.max(0, bytes.size() - start));
            for (long done = 0; done < there; done += PIECE) {
                content.writeBytes(bytes.read(start + done, (int) Math.min(PIECE, there - done)));
            }
            if (there < length) {
                break;
            }
        }
        if (content.size() < wanted) {
            found.add("only " + content.size() + " of the file's " + file.size() + " bytes could be read");
        }
        return new FileContent(content.toByteArray(), found);
    }

    /** The chain from {@code first} in the FAT copy that serves it best. */
    private ClusterChain bestChain(long first, long clusters, boolean mayGoOn, List<String> found) throws IOException {
        ClusterChain best = null;
        for (int copy : copies.order()) {
            ClusterChain chain = new FatTable(bytes, geometry, copy).chain(first, clusters);
            boolean whole = chain.clusters().size() == clusters
                    && (chain.isComplete() || mayGoOn && chain.ending() == ChainEnding.LONGER);
            if (whole) {
                if (best != null) {
                    String how =
                            best.isComplete() ? "is too short" : best.ending().words();
                    found.add("the file's cluster chain is damaged in one FAT copy (it " + how
                            + "); it was followed in copy " + (copy + 1));
                }
                return chain;
            }
            if (best == null || chain.clusters().size() > best.clusters().size()) {
                best = chain;
            }
        }
        if (best.isComplete()) {
            found.add("the file's cluster chain is shorter than its size");
        } else {
            found.add("the file's cluster chain " + best.ending().words());
        }
        return best;
    }

    private static List<List<Long>> runs(List<Long> clusters) {
        List<List<Long>> runs = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= clusters.size(); i++) {
            if (i == clusters.size() || clusters.get(i) != clusters.get(i - 1) + 1) {
                runs.add(clusters.subList(from, i));
                from = i;
            }
        }
        return runs;
    }

    /**
     * Whether the chain of a file or folder is whole, up to {@code most} clusters, and none of its FAT32 entries carries
     * reserved upper bits: what a reader that trusts a card blindly needs to come to an end.
     *
     * @param first its first cluster; 0 for an empty file, or for the fixed root folder of FAT12 and FAT16
     */
    public boolean hasPlainChain(long first, long most) throws IOException {
        ClusterChain chain = table().chain(first, most);
        if (!chain.isComplete()) {
            return false;
        }
        if (geometry.type() == FatType.FAT32) {
            for (long cluster : chain.clusters()) {
                EntryPlace place = EntryPlace.of(geometry, geometry.activeFat(), cluster);
                if ((bytes.read(place.offset(), place.bytes())[3] & 0xF0) != 0) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Where the volume's last writer would have looked for a free cluster next; only FAT32 keeps that. */
    public OptionalLong nextFreeHint() throws IOException {
        return FsInfo.read(bytes, geometry)
                .filter(info -> info.knowsNextFree(geometry))
                .map(info -> OptionalLong.of(info.nextFree()))
                .orElse(OptionalLong.empty());
    }

    /** The FAT copies in use in the order in which they are asked. */
    List<Integer> copies() {
        return copies.order();
    }

    /** The FAT copy that is asked first. */
    FatTable table() {
        return new FatTable(bytes, geometry, copies.order().get(0));
    }

    VolumeBytes bytes() {
        return bytes;
    }
}
