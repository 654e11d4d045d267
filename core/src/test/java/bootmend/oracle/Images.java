package bootmend.oracle;

import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Image files as disks in memory and back. */
final class Images {

    private static final int PIECE = 1 << 20;

    private Images() {}

    static SparseDisk load(Path image) throws IOException {
        SparseDisk disk = new SparseDisk(Files.size(image), 512);
        copyInto(disk, image, 0);
        return disk;
    }

    static void copyInto(SparseDisk disk, Path image, long offset) throws IOException {
        try (FileChannel channel = FileChannel.open(image)) {
            ByteBuffer piece = ByteBuffer.allocate(PIECE);
            for (long at = 0; at < channel.size(); at += piece.position()) {
                piece.clear();
                channel.read(piece, at);
                byte[] bytes = new byte[piece.position()];
                piece.get(0, bytes);
                disk.patch(offset + at, bytes);
            }
        }
    }

    static void create(Path image, long size) throws IOException {
        try (FileChannel channel = FileChannel.open(image, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            channel.write(ByteBuffer.allocate(1), size - 1);
        }
    }

    /** The volume that starts at {@code offset} of a card, in a file of its own, for tools that take no offset. */
    static Path volume(Path card, long offset, Path file) throws IOException {
        if (offset == 0) {
            return card;
        }
        Files.deleteIfExists(file);
        try (FileChannel in = FileChannel.open(card);
                FileChannel out = FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
            in.transferTo(offset, in.size() - offset, out);
        }
        return file;
    }
}
