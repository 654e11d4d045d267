package bootmend.device.system;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;

/** A file, or a disk of a system that gives disks names among its files, through Java's own channel. */
record ChannelFile(FileChannel channel) implements RawFile {

    /** Opens what is there; nothing is ever made where there is nothing. */
    static ChannelFile open(Path path, boolean change) throws IOException {
        Set<StandardOpenOption> how =
                change ? Set.of(StandardOpenOption.READ, StandardOpenOption.WRITE) : Set.of(StandardOpenOption.READ);
        return new ChannelFile(FileChannel.open(path, how));
    }

    @Override
    public int read(ByteBuffer dest, long position) throws IOException {
        return channel.read(dest, position);
    }

    @Override
    public int write(ByteBuffer src, long position) throws IOException {
        return channel.write(src, position);
    }

    @Override
    public void sync() throws IOException {
        channel.force(true);
    }

    @Override
    public long size() throws IOException {
        return channel.size();
    }

    @Override
    public boolean lock() throws IOException {
        try {
            return channel.tryLock() != null;
        } catch (OverlappingFileLockException e) {
            return false;
        }
    }

    @Override
    public boolean isOpen() {
        return channel.isOpen();
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
