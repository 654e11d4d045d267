package bootmend.boot;

import bootmend.fat.FileBytes;
import java.io.IOException;
import java.io.InputStream;

/** A file's bytes from some place on as a stream, read in pieces. */
final class FileInput extends InputStream {

    private static final int PIECE = 1 << 16;

    private final FileBytes file;
    private long next;
    private byte[] piece = new byte[0];
    private int at;

    FileInput(FileBytes file, long from) {
        this.file = file;
        this.next = from;
    }

    @Override
    public int read() throws IOException {
        return fill() ? piece[at++] & 0xFF : -1;
    }

    @Override
    public int read(byte[] target, int offset, int length) throws IOException {
        if (length == 0) {
            return 0;
        }
        if (!fill()) {
            return -1;
        }
        int count = Math.min(length, piece.length - at);
        System.arraycopy(piece, at, target, offset, count);
        at += count;
        return count;
    }

    @Override
    public int available() {
        return piece.length - at;
    }

    private boolean fill() throws IOException {
        if (at == piece.length) {
            piece = file.read(next, PIECE);
            next += piece.length;
            at = 0;
        }
        return piece.length > 0;
    }
}
