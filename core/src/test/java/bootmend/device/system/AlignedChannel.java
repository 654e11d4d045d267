package bootmend.device.system;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.MappedByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.ReadableByteChannel;
import java.nio.channels.WritableByteChannel;

/** A channel that, like the raw disks of some systems, refuses what does not begin and end at whole sectors. */
final class AlignedChannel extends FileChannel {

    private final FileChannel channel;
    private final int sector;

    AlignedChannel(FileChannel channel, int sector) {
        this.channel = channel;
        this.sector = sector;
    }

    @Override
    public int read(ByteBuffer target, long position) throws IOException {
        check(position, target.remaining());
        return channel.read(target, position);
    }

    @Override
    public int write(ByteBuffer source, long position) throws IOException {
        check(position, source.remaining());
        return channel.write(source, position);
    }

    private void check(long position, int length) throws IOException {
        if (position % sector != 0 || length % sector != 0) {
            throw new IOException("invalid argument: " + length + " bytes at " + position);
        }
    }

    @Override
    public void force(boolean metadata) throws IOException {
        channel.force(metadata);
    }

    @Override
    protected void implCloseChannel() throws IOException {
        channel.close();
    }

    @Override
    public int read(ByteBuffer target) {
        throw new UnsupportedOperationException();
    }

    @Override
    public long read(ByteBuffer[] targets, int offset, int length) {
        throw new UnsupportedOperationException();
    }

    @Override
    public int write(ByteBuffer source) {
        throw new UnsupportedOperationException();
    }

    @Override
    public long write(ByteBuffer[] sources, int offset, int length) {
        throw new UnsupportedOperationException();
    }

    @Override
    public long position() {
        throw new UnsupportedOperationException();
    }

    @Override
    public FileChannel position(long position) {
        throw new UnsupportedOperationException();
    }

    @Override
    public long size() {
        throw new UnsupportedOperationException();
    }

    @Override
    public FileChannel truncate(long size) {
        throw new UnsupportedOperationException();
    }

    @Override
    public long transferTo(long position, long count, WritableByteChannel target) {
        throw new UnsupportedOperationException();
    }

    @Override
    public long transferFrom(ReadableByteChannel source, long position, long count) {
        throw new UnsupportedOperationException();
    }

    @Override
    public MappedByteBuffer map(MapMode mode, long position, long size) {
        throw new UnsupportedOperationException();
    }

    @Override
    public FileLock lock(long position, long size, boolean shared) {
        throw new UnsupportedOperationException();
    }

    @Override
    public FileLock tryLock(long position, long size, boolean shared) {
        throw new UnsupportedOperationException();
    }
}
