package bootmend.operation;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;

/** The whole content of a file that is no text with lines; immutable. */
public final class FileBody {

    private final byte[] bytes;

    FileBody(byte[] bytes) {
        this.bytes = bytes;
    }

    /** Its size in bytes. */
    public long size() {
        return bytes.length;
    }

    /** In hex. */
    public String sha256() {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    byte[] bytes() {
        return bytes.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof FileBody body && Arrays.equals(bytes, body.bytes);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(bytes);
    }

    @Override
    public String toString() {
        return size() + " bytes";
    }
}
