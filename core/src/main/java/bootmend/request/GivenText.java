package bootmend.request;

import java.util.Arrays;

/** A config file's bytes that a user hands over instead of naming where they are; immutable. */
public final class GivenText {

    /** Larger than any config file a board was ever given. */
    public static final int MOST_BYTES = 1 << 20;

    private final byte[] bytes;

    /** @param bytes one more than {@link #MOST_BYTES} where there are too many */
    public GivenText(byte[] bytes) {
        this.bytes = bytes.clone();
    }

    public byte[] bytes() {
        return bytes.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof GivenText text && Arrays.equals(bytes, text.bytes);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(bytes);
    }
}
