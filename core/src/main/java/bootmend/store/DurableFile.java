package bootmend.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.HexFormat;
import java.util.concurrent.ThreadLocalRandom;

/** Writes a file so that after a cut, at whatever moment, the old one or the new one is there whole. */
public final class DurableFile {

    private DurableFile() {
    }

    /** Writes beside the file, forces that to the disk, renames it over the file and forces the folder. */
    public static void write(Path file, byte[] bytes) throws IOException {
        Path folder = Files.createDirectories(file.toAbsolutePath().getParent());
        String end = HexFormat.of().toHexDigits(ThreadLocalRandom.current().nextInt());
        Path unfinished = folder.resolve("." + file.getFileName() + "." + end + ".tmp");
        try {
            writeNew(unfinished, bytes);
            Files.move(unfinished, file, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(unfinished);
        }
        force(folder);
        if (folder.getParent() != null) {
            force(folder.getParent());
        }
    }

    private static void writeNew(Path file, byte[] bytes) throws IOException {
        try (FileChannel channel =
                FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            ByteBuffer buffer = ByteBuffer.wrap(bytes);
            while (buffer.hasRemaining()) {
                channel.write(buffer);
            }
            channel.force(true);
        }
    }

    /** A renamed file is durable only once its folder is; systems that cannot force a folder do it themselves. */
    private static void force(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException e) {
            return;
        }
    }
}
