package bootmend.device;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;

/** Writes small files on this computer so that a power cut leaves the old file or the new one, never a half. */
public final class DurableFile {

    private DurableFile() {}

    /**
     * Writes a file that must not be there yet, and syncs it and its folder.
     *
     * @throws java.nio.file.FileAlreadyExistsException when it is there
     */
    public static void create(Path file, byte[] bytes) throws IOException {
        write(file, bytes, StandardOpenOption.CREATE_NEW);
        syncFolder(file.getParent());
    }

    /** Puts {@code bytes} in place of what the file holds, in one step, and syncs it and its folder. */
    public static void replace(Path file, byte[] bytes) throws IOException {
        Path beside = file.resolveSibling(file.getFileName() + ".new");
        write(beside, bytes, StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING);
        Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        syncFolder(file.getParent());
    }

    /**
     * The same through a new file at {@code beside}, in the same folder; what is there is taken away first. A link at
     * either place is replaced, never followed. The new file keeps the old one's permissions where there are any.
     */
    public static void replaceBeside(Path file, Path beside, byte[] bytes) throws IOException {
        Files.deleteIfExists(beside);
        write(beside, bytes, StandardOpenOption.CREATE_NEW);
        boolean posix = file.getFileSystem().supportedFileAttributeViews().contains("posix");
        if (posix && Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            Files.setPosixFilePermissions(beside, Files.getPosixFilePermissions(file, LinkOption.NOFOLLOW_LINKS));
        }
        Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        syncFolder(file.getParent());
    }

    /** Takes a file away and syncs its folder. */
    public static void delete(Path file) throws IOException {
        Files.delete(file);
        syncFolder(file.getParent());
    }

    /** Renames in one step and syncs both folders. */
    public static void move(Path from, Path to) throws IOException {
        Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        syncFolder(to.getParent());
        if (!to.getParent().equals(from.getParent())) {
            syncFolder(from.getParent());
        }
    }

    private static void write(Path file, byte[] bytes, StandardOpenOption... how) throws IOException {
        StandardOpenOption[] options = Arrays.copyOf(how, how.length + 1);
        options[how.length] = StandardOpenOption.WRITE;
        try (FileChannel channel = FileChannel.open(file, options)) {
            ByteBuffer buffer = ByteBuffer.wrap(bytes);
            while (buffer.hasRemaining()) {
                channel.write(buffer);
            }
            channel.force(true);
        }
    }

    /**
     * Syncs a folder's own entries: a new, renamed or deleted file is durable only once they are. Nothing is done on a
     * system on which a program cannot open a folder, as one without POSIX permissions cannot.
     *
     * @throws IOException where it failed: what was done is there, but may not outlast a power cut
     */
    public static void syncFolder(Path folder) throws IOException {
        if (!folder.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            return;
        }
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException e) {
            throw new IOException("the folder " + folder + " could not be synced (" + e.getMessage() + ")", e);
        }
    }
}
