package bootmend.batch;

import bootmend.device.DurableFile;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The batches on this computer that were cut and of which nobody was told yet. Each is told once; its journal is kept for
 * a while after that.
 *
 * <p>To be looked for before this process begins a batch of its own: on some systems, closing a file that is only looked
 * at gives up the lock that its process holds on it.
 */
public final class CutBatches {

    /** A folder with more than these is not looked through to its end. */
    private static final int MOST_FILES = 1000;
    /** As many are told at once. */
    private static final int MOST_TOLD = 20;
    /** As many are kept that were told. */
    private static final int MOST_KEPT = 20;

    private static final int MOST_BYTES = 1 << 25;

    private final Path folder;

    /** @param home bootmend's data folder */
    public CutBatches(Path home) {
        this.folder = JournalText.folderIn(home);
    }

    /** Those that were not told yet, the oldest first; a file that is none, or cannot be read, is passed over. */
    public List<CutBatch> untold() {
        List<CutBatch> batches = new ArrayList<>();
        for (Path file : journals(folder)) {
            if (batches.size() < MOST_TOLD) {
                read(file).ifPresent(batches::add);
            }
        }
        return batches;
    }

    private static List<Path> journals(Path folder) {
        List<Path> found = new ArrayList<>();
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*" + JournalText.SUFFIX)) {
            for (Path file : files) {
                if (found.size() < MOST_FILES && Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
                    found.add(file);
                }
            }
        } catch (IOException | DirectoryIteratorException e) {
            // Nothing can be told of what cannot be listed, and no command is kept from its own work by that.
            return List.of();
        }
        found.sort(null);
        return found;
    }

    /** Nothing where its batch still runs. */
    private static Optional<CutBatch> read(Path file) {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS)) {
            if (isLocked(channel) || channel.size() > MOST_BYTES) {
                return Optional.empty();
            }
            InputStream in = Channels.newInputStream(channel);
            return JournalText.read(file, in.readNBytes(MOST_BYTES));
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    private static boolean isLocked(FileChannel channel) {
        try {
            FileLock lock = channel.tryLock(0, Long.MAX_VALUE, true);
            if (lock == null) {
                return true;
            }
            lock.release();
            return false;
        } catch (OverlappingFileLockException e) {
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    /** Where a batch's journal is kept once it was told. */
    public Path kept(CutBatch batch) {
        return folder.resolve("told").resolve(batch.journal().getFileName());
    }

    /**
     * Notes that a user was told of it.
     *
     * @throws IOException where that cannot be noted; it is told again then
     */
    public void told(CutBatch batch) throws IOException {
        Path kept = kept(batch);
        Files.createDirectories(kept.getParent());
        DurableFile.move(batch.journal(), kept);
        List<Path> all = journals(kept.getParent());
        for (Path old : all.subList(0, Math.max(0, all.size() - MOST_KEPT))) {
            DurableFile.delete(old);
        }
    }
}
