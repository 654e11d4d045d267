package bootmend.change;

import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fat.Geometry;
import de.waldheinz.fs.BlockDevice;
import de.waldheinz.fs.FsDirectory;
import de.waldheinz.fs.FsDirectoryEntry;
import de.waldheinz.fs.FsFile;
import de.waldheinz.fs.fat.FatFileSystem;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Optional;

/**
 * Reads a changed file once more with fat32-lib, which shares no code with {@code bootmend.fat}.
 *
 * <p>It opens fewer cards than {@code bootmend.fat} does and follows looping chains for ever, so it is asked only after
 * ours has read the root folder and the file without a warning and seen the folders' chains end, and only where its
 * whole-table reading stays small.
 */
final class SecondReader {

    /** fat32-lib holds eight bytes a cluster in memory. */
    private static final long MOST_CLUSTERS = 8_000_000;

    private static final int ITS_SECTOR = 512;
    /** It reads a FAT as long as the boot sector says, so that length must go with the clusters. */
    private static final long FAT_SLACK = 1 << 20;
    /** A folder has at most two mebibytes and a boot file 48; in the smallest clusters that is this many. */
    private static final long MOST_CHAIN = 98_304;

    /** What the second reader says of a file. */
    enum Answer {
        AGREES,
        /** It cannot read such a card; that says nothing about the change. */
        NOT_ASKED,
        DISAGREES
    }

    private SecondReader() {}

    static Answer ask(BlockDevice window, FatVolume ours, String path, byte[] expected) throws IOException {
        if (!canRead(ours) || !comesToAnEnd(ours, path)) {
            return Answer.NOT_ASKED;
        }
        try {
            FsFile file = find(FatFileSystem.read(window, true).getRoot(), path);
            if (file == null || file.getLength() != expected.length) {
                return Answer.DISAGREES;
            }
            ByteBuffer content = ByteBuffer.allocate(expected.length);
            if (expected.length > 0) {
                file.read(0, content);
            }
            return Arrays.equals(content.array(), expected) ? Answer.AGREES : Answer.DISAGREES;
        } catch (IOException | RuntimeException e) {
            return Answer.NOT_ASKED;
        }
    }

    private static boolean canRead(FatVolume ours) throws IOException {
        Geometry geometry = ours.geometry();
        long fatNeeded = (geometry.clusterCount() + Geometry.FIRST_CLUSTER)
                * geometry.type().bits()
                / 8;
        return geometry.clusterCount() <= MOST_CLUSTERS
                && geometry.fatLength() <= fatNeeded + FAT_SLACK
                && geometry.bytesPerSector() == ITS_SECTOR
                && geometry.mirrored()
                && ours.warnings().isEmpty()
                && ours.root().warnings().isEmpty();
    }

    /** It reads every folder on the way and the file to the end of their chains. */
    private static boolean comesToAnEnd(FatVolume ours, String path) throws IOException {
        if (!ours.hasPlainChain(ours.geometry().rootCluster(), MOST_CHAIN)) {
            return false;
        }
        StringBuilder part = new StringBuilder();
        for (String name : path.split("/", -1)) {
            part.append('/').append(name);
            Optional<DirectoryEntry> entry = ours.find(part.toString());
            if (entry.isEmpty() || !ours.hasPlainChain(entry.get().firstCluster(), MOST_CHAIN)) {
                return false;
            }
        }
        return true;
    }

    private static FsFile find(FsDirectory root, String path) throws IOException {
        FsDirectory directory = root;
        String[] parts = path.split("/", -1);
        for (int i = 0; i < parts.length; i++) {
            FsDirectoryEntry entry = directory.getEntry(parts[i]);
            if (entry == null) {
                return null;
            }
            if (i == parts.length - 1) {
                return entry.isFile() ? entry.getFile() : null;
            }
            directory = entry.getDirectory();
        }
        return null;
    }
}
