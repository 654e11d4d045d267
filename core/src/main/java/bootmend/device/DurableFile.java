package bootmend.device;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.Arrays;
import java.util.Locale;

/** Writes small files on this computer so that a power cut leaves the old file or the new one, never a half. */
public final class DurableFile {

    private DurableFile() {}

    /**
     * Writes a file that must not be there yet, and forces it and its folder.
     *
     * @throws java.nio.file.FileAlreadyExistsException when it is there
     */
    public static void create(Path file, byte[] bytes) throws IOException {
        write(file, bytes, StandardOpenOption.CREATE_NEW);
        forceFolder(file.getParent());
    }

    /** Puts {@code bytes} in place of what the file holds, in one step, and forces it and its folder. */
    public static void replace(Path file, byte[] bytes) throws IOException {
        Path beside = file.resolveSibling(file.getFileName() + ".new");
        write(beside, bytes, StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING);
        Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        forceFolder(file.getParent());
    }

    /**
     * The same through a new file at {@code beside}, in the same folder, where none must be yet. A link at {@code file}
     * is replaced, never followed. The new file keeps the old one's permissions where there are any.
     *
     * @param written the time that the new file gets where the system lets it be set
     */
    public static void replaceBeside(Path file, Path beside, byte[] bytes, Instant written) throws IOException {
        write(beside, bytes, StandardOpenOption.CREATE_NEW);
        boolean posix = file.getFileSystem().supportedFileAttributeViews().contains("posix");
        if (posix && Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            Files.setPosixFilePermissions(beside, Files.getPosixFilePermissions(file, LinkOption.NOFOLLOW_LINKS));
        }
        setTime(beside, written);
        Files.move(beside, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        forceFolder(file.getParent());
    }

    /** Not every system lets a file's time be set that it lets be written; the content is what counts. */
    private static void setTime(Path file, Instant written) {
        try {
            Files.setLastModifiedTime(file, FileTime.from(written));
        } catch (IOException e) {
            return;
        }
    }

    /** Takes a file away and forces its folder. */
    public static void delete(Path file) throws IOException {
        Files.delete(file);
        forceFolder(file.getParent());
    }

    /** Renames in one step and forces both folders. */
    public static void move(Path from, Path to) throws IOException {
        Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        forceFolder(to.getParent());
        if (!to.getParent().equals(from.getParent())) {
            forceFolder(from.getParent());
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
     * A new or renamed file is durable only once its folder is.
     *
     * <p>Some systems cannot open a folder, and some file systems cannot force one; those write it themselves. Any other
     * failure is one.
     */
    private static void forceFolder(Path folder) throws IOException {
        FileChannel channel;
        try {
            channel = FileChannel.open(folder, StandardOpenOption.READ);
        } catch (IOException e) {
            return;
        }
        try (channel) {
            channel.force(true);
        } catch (IOException e) {
            if (!isNotOffered(e)) {
                throw new IOException("the folder " + folder + " could not be forced (" + e.getMessage() + ")", e);
            }
        }
    }

    /** By the words that systems have for EINVAL and ENOTSUP; Java does not give the number. */
    private static boolean isNotOffered(IOException e) {
        String words = String.valueOf(e.getMessage()).toLowerCase(Locale.ROOT);
        return words.contains("invalid argument") || words.contains("not supported");
    }
}
