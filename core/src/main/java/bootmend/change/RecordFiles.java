package bootmend.change;

import bootmend.CardException;
import bootmend.device.DurableFile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** What the store of undo records asks of a file system. */
interface RecordFiles {

    /** Writes a file that must not be there yet, in a folder that is made where it is missing, and forces both. */
    void create(Path file, byte[] bytes) throws IOException;

    /** Renames in one step, into a folder that is made where it is missing, and forces both folders. */
    void move(Path from, Path to) throws IOException;

    void delete(Path file) throws IOException;

    /**
     * Whole content of a plain file.
     *
     * @throws NoSuchFileException where nothing has that name
     * @throws IOException where it is a link, a folder or a special file, or has over {@code most} bytes
     */
    byte[] read(Path file, int most) throws IOException;

    /** What is in a folder, by file name, in order; nothing where the folder is missing. */
    List<Path> list(Path folder) throws CardException, IOException;

    Instant lastWritten(Path file) throws IOException;

    /** This computer's files. */
    final class OfThisComputer implements RecordFiles {

        /** No source: a bound; at a hundred changes a day it takes years to reach. */
        private static final int MOST_FILES = 1_000_000;

        private static final int PIECE = 1 << 16;

        @Override
        public void create(Path file, byte[] bytes) throws IOException {
            Files.createDirectories(file.getParent());
            DurableFile.create(file, bytes);
        }

        @Override
        public void move(Path from, Path to) throws IOException {
            Files.createDirectories(to.getParent());
            DurableFile.move(from, to);
        }

        @Override
        public void delete(Path file) throws IOException {
            DurableFile.delete(file);
        }

        /** What a file is, is asked before it is opened: opening some special files never returns. */
        @Override
        public byte[] read(Path file, int most) throws IOException {
            BasicFileAttributes attributes =
                    Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
            if (!attributes.isRegularFile()) {
                throw new IOException("it is a " + kind(attributes) + ", not a plain file");
            }
            ByteArrayOutputStream bytes = new ByteArrayOutputStream((int) Math.min(attributes.size(), most));
            try (InputStream in = Files.newInputStream(file, StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS)) {
                byte[] piece = new byte[PIECE];
                for (int n = in.read(piece); n > 0; n = in.read(piece)) {
                    if (bytes.size() + n > most) {
                        throw new IOException("it has over " + most + " bytes, more than any record");
                    }
                    bytes.write(piece, 0, n);
                }
            }
            return bytes.toByteArray();
        }

        private static String kind(BasicFileAttributes attributes) {
            if (attributes.isSymbolicLink()) {
                return "link";
            }
            return attributes.isDirectory() ? "folder" : "special file";
        }

        @Override
        public List<Path> list(Path folder) throws CardException, IOException {
            List<Path> files = new ArrayList<>();
            try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder)) {
                for (Path file : stream) {
                    if (files.size() >= MOST_FILES) {
                        throw CardException.refused(
                                folder + " holds over " + MOST_FILES + " files",
                                "Move what is no undo record out of it.");
                    }
                    files.add(file);
                }
            } catch (NoSuchFileException e) {
                return List.of();
            }
            files.sort(null);
            return files;
        }

        @Override
        public Instant lastWritten(Path file) throws IOException {
            return Files.getLastModifiedTime(file, LinkOption.NOFOLLOW_LINKS).toInstant();
        }
    }
}
