package bootmend.boot;

import bootmend.fat.FileBytes;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/** Numbers in a file's bytes; what lies past its end is an {@link EndsTooEarly}. */
final class FileNumbers {

    /** Says that a file ends before something that it should hold. */
    static final class EndsTooEarly extends IOException {
        private static final long serialVersionUID = 1L;

        EndsTooEarly(long needed, long there) {
            super("it should reach to byte " + needed + ", but has " + there);
        }
    }

    private final FileBytes file;
    private final ByteOrder order;

    FileNumbers(FileBytes file, ByteOrder order) {
        this.file = file;
        this.order = order;
    }

    /** Exactly these bytes, as numbers. */
    ByteBuffer at(long offset, int length) throws IOException {
        return ByteBuffer.wrap(bytes(offset, length)).order(order);
    }

    /** Exactly these bytes. */
    byte[] bytes(long offset, int length) throws IOException {
        byte[] bytes = offset < 0 ? new byte[0] : file.read(offset, length);
        if (bytes.length < length) {
            throw new EndsTooEarly(offset + length, Math.min(file.size(), Math.max(0, offset) + bytes.length));
        }
        return bytes;
    }
}
