package bootmend.device.system;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;

/**
 * A disk at its most stubborn: it refuses every access that does not begin and end at whole sectors, tells no size, moves at
 * most a few sectors at a time and now and then a part of one, and counts its syncs.
 */
final class StubbornFile implements RawFile {

    private static final int MOST_SECTORS = 3;

    private final FileChannel channel;
    private final int sector;
    private int accesses;
    private int syncs;

    StubbornFile(FileChannel channel, int sector) {
        this.channel = channel;
        this.sector = sector;
    }

    int syncs() {
        return syncs;
    }

    @Override
    public int read(ByteBuffer dest, long position) throws IOException {
        ByteBuffer part = part(dest, position);
        int n = channel.read(part, position);
        dest.position(dest.position() + Math.max(0, n));
        return n;
    }

    @Override
    public int write(ByteBuffer src, long position) throws IOException {
        ByteBuffer part = part(src, position);
        int n = channel.write(part, position);
        src.position(src.position() + n);
        return n;
    }

    private ByteBuffer part(ByteBuffer whole, long position) throws IOException {
        if (position % sector != 0 || whole.remaining() % sector != 0) {
            throw new IOException("invalid argument: " + whole.remaining() + " bytes at " + position);
        }
        accesses++;
        int most = MOST_SECTORS * sector - (accesses % 4 == 0 ? 100 : 0);
        ByteBuffer part = whole.duplicate();
        return part.limit(part.position() + Math.min(part.remaining(), most));
    }

    @Override
    public void sync() throws IOException {
        syncs++;
        channel.force(true);
    }

    @Override
    public long size() {
        return 0;
    }

    @Override
    public boolean lock() {
        return true;
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
