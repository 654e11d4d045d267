package bootmend.device.system;

import java.io.IOException;
import java.nio.ByteBuffer;

/** Passes everything on; a test overrides what is to go wrong. */
class ForwardingFile implements RawFile {

    private final RawFile file;

    ForwardingFile(RawFile file) {
        this.file = file;
    }

    @Override
    public int read(ByteBuffer dest, long position) throws IOException {
        return file.read(dest, position);
    }

    @Override
    public int write(ByteBuffer src, long position) throws IOException {
        return file.write(src, position);
    }

    @Override
    public void sync() throws IOException {
        file.sync();
    }

    @Override
    public long size() throws IOException {
        return file.size();
    }

    @Override
    public boolean lock() throws IOException {
        return file.lock();
    }

    @Override
    public boolean isOpen() {
        return file.isOpen();
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
