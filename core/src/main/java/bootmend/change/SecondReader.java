package bootmend.change;

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

/**
 * Reads a changed file once more with fat32-lib, which shares no code with {@code bootmend.fat}.
 *
 * <p>It opens fewer cards than {@code bootmend.fat} does and follows looping chains for ever, so it is asked only after
 * ours has read the root folder and the file without a doubt and seen the folders' chains end, and only where its
 * whole-table reading stays small.
 */
final class SecondReader {

    /** fat32-lib holds eight bytes a cluster in memory. */
    private static final long MOST_CLUSTERS = 8_000_000;
    private static final int ITS_SECTOR = 512;

    /** What the second reader says of a file. */
    enum Answer {
        AGREES,
        /** It cannot read such a card; that says nothing about the change. */
        NOT_ASKED,
        DISAGREES
    }

    private SecondReader() {
    }

    static Answer ask(BlockDevice window, FatVolume ours, String path, byte[] expected) throws IOException {
        Geometry geometry = ours.geometry();
        if (geometry.clusterCount() > MOST_CLUSTERS || geometry.bytesPerSector() != ITS_SECTOR || !geometry.mirrored()
                || !ours.root().doubts().isEmpty() || !ours.doubts().isEmpty() || ours.usesReservedBits()
                || !ours.hasSoundFolders(path)) {
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

    private static FsFile find(FsDirectory root, String path) throws IOException {
        FsDirectory directory = root;
        String[] parts = path.split("/");
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
