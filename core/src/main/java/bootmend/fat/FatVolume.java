package bootmend.fat;

import de.waldheinz.fs.BlockDevice;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A FAT volume that is open for reading: its geometry, folders and files, read only as far as they are asked for. */
public final class FatVolume {

    /** Where a FAT32 volume keeps the copy of its boot sector. */
    private static final int BACKUP_SECTOR = 6;
    private static final int PIECE = 65536;

    private final VolumeBytes bytes;
    private final Geometry geometry;
    private final List<String> doubts;
    private Directory root;

    private FatVolume(VolumeBytes bytes, Geometry geometry, List<String> doubts) {
        this.bytes = bytes;
        this.geometry = geometry;
        this.doubts = List.copyOf(doubts);
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
        List<String> doubts = new ArrayList<>();
        Geometry geometry;
        try {
            geometry = BootSector.read(first.read(0, BootSector.LENGTH));
        } catch (BadVolumeException e) {
            geometry = fromBackup(first).orElseThrow(() -> e);
            doubts.add(e.getMessage() + "; its backup in sector " + BACKUP_SECTOR + " was read instead");
        }
        if (geometry.length() > device.getSize()) {
            doubts.add("the volume should have " + geometry.length() + " bytes, but only " + device.getSize()
                    + " are there; the card or image is cut off");
        }
        return new FatVolume(new VolumeBytes(device, geometry.bytesPerSector()), geometry, doubts);
    }

    private static Optional<Geometry> fromBackup(VolumeBytes device) throws IOException {
        for (int sector = 512; sector <= 4096; sector *= 2) {
            long at = (long) BACKUP_SECTOR * sector;
            if (at + BootSector.LENGTH > device.size()) {
                break;
            }
            try {
                Geometry geometry = BootSector.read(device.read(at, BootSector.LENGTH));
                if (geometry.type() == FatType.FAT32 && geometry.bytesPerSector() == sector) {
                    return Optional.of(geometry);
                }
            } catch (BadVolumeException e) {
                // Not a backup at this sector size; the next size may have one.
            }
        }
        return Optional.empty();
    }

    public Geometry geometry() {
        return geometry;
    }

    /** Sentences on what was damaged in the volume's own description. */
    public List<String> doubts() {
        return doubts;
    }

    /** The root folder, read once. */
    public Directory root() throws IOException {
        if (root == null) {
            DirectoryReader reader = new DirectoryReader(bytes, geometry);
            root = geometry.type() == FatType.FAT32
                    ? reader.readChain(table(), geometry.rootCluster())
                    : reader.readFixedRoot();
        }
        return root;
    }

    /** What {@code folder} holds. */
    public Directory list(DirectoryEntry folder) throws IOException {
        if (!folder.folder()) {
            throw new BadVolumeException(folder.name() + " is a file, not a folder");
        }
        return new DirectoryReader(bytes, geometry).readChain(table(), folder.firstCluster());
    }

    /** The file or folder at {@code path}, its parts separated by {@code /}, whatever their case. */
    public Optional<DirectoryEntry> find(String path) throws IOException {
        Directory directory = root();
        Optional<DirectoryEntry> found = Optional.empty();
        for (String part : path.split("/")) {
            if (part.isEmpty()) {
                continue;
            }
            if (found.isPresent()) {
                if (!found.get().folder()) {
                    return Optional.empty();
                }
                directory = list(found.get());
            }
            found = directory.find(part);
            if (found.isEmpty()) {
                return found;
            }
        }
        return found;
    }

    /**
     * Reads {@code file}, at most {@code limit} bytes of it; a chain that is damaged in one FAT copy is followed in
     * another where that one is whole.
     */
    public FileContent read(DirectoryEntry file, int limit) throws IOException {
        long wanted = Math.min(file.size(), limit);
        List<String> found = new ArrayList<>();
        ClusterChain chain = bestChain(file.firstCluster(), geometry.clustersFor(wanted),
                file.size() > limit, found);
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
        for (int copy : geometry.fatsInUse()) {
            ClusterChain chain = new FatTable(bytes, geometry, copy).chain(first, clusters);
            boolean whole = chain.clusters().size() == clusters
                    && (chain.isComplete() || mayGoOn && chain.ending() == ClusterChain.Ending.LONGER);
            if (whole) {
                if (best != null) {
                    String how = best.isComplete() ? "is too short" : best.ending().words();
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

    /** The FAT copy that is read first. */
    FatTable table() {
        return new FatTable(bytes, geometry, geometry.activeFat());
    }

    VolumeBytes bytes() {
        return bytes;
    }
}
