package bootmend.change;

import bootmend.CardException;
import bootmend.device.DurableFile;
import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;

/**
 * Gives a file on this computer new content: written beside the old, synced and renamed over it, then read back, so that a
 * cut leaves the old file or the new one. Links are followed first; what they lead to is replaced.
 */
public final class FileWrite {

    private static final String BESIDE = ".bm~";

    private FileWrite() {}

    /**
     * Writes the change's new bytes.
     *
     * @param file the file, of which {@code change} says what it holds
     * @param written the time that the new file gets
     * @throws CardException of kind REFUSED where the file is not as the change says, or could not be replaced
     */
    public static Committed.ToFile run(Path file, FileChange change, Instant written) throws CardException {
        try {
            Path real = file.toRealPath();
            if (!Arrays.equals(read(real, change.before().length + 1), change.before())) {
                throw CardException.refused(file + " changed since it was read", "Nothing was written. Try again.");
            }
            Path beside = real.resolveSibling(real.getFileName() + BESIDE);
            write(real, beside, change.after(), written);
            if (!Arrays.equals(read(real, change.after().length + 1), change.after())) {
                throw new IOException("it does not read back as it was written");
            }
            return new Committed.ToFile(real.toString());
        } catch (IOException e) {
            throw CardException.refused(
                    file + " could not be written (" + e.getMessage() + ")",
                    "Look at it before you go on: it is as it was or as it was to be, and nothing in between.",
                    e);
        }
    }

    private static void write(Path file, Path beside, byte[] bytes, Instant written) throws CardException, IOException {
        try {
            DurableFile.replaceBeside(file, beside, bytes, written);
        } catch (FileAlreadyExistsException e) {
            throw CardException.refused(
                    "there is a file " + beside + " already, which an earlier write that was interrupted may have left",
                    "Nothing was written. Look at it, and take it away if you need nothing of it.",
                    e);
        } catch (IOException e) {
            Files.deleteIfExists(beside);
            throw e;
        }
    }

    private static byte[] read(Path file, int limit) throws IOException {
        try (var in = Files.newInputStream(file)) {
            return in.readNBytes(limit);
        }
    }
}
