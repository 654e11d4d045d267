package bootmend.boot;

import bootmend.fat.FileBytes;
import java.util.Arrays;
import java.util.List;

/** A file in memory. */
record ArrayBytes(byte[] bytes) implements FileBytes {

    static ArrayBytes cut(byte[] bytes, int length) {
        return new ArrayBytes(Arrays.copyOf(bytes, length));
    }

    static ArrayBytes flipped(byte[] bytes, int at) {
        byte[] copy = bytes.clone();
        copy[at] ^= 0x41;
        return new ArrayBytes(copy);
    }

    @Override
    public long size() {
        return bytes.length;
    }

    @Override
    public byte[] read(long offset, int length) {
        int from = (int) Math.min(bytes.length, offset);
        return Arrays.copyOfRange(bytes, from, (int) Math.min(bytes.length, (long) from + length));
    }

    @Override
    public List<String> warnings() {
        return List.of();
    }
}
