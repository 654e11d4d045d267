package bootmend.device.packed;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.util.OptionalLong;

/** A packed image that can be unpacked from one or more places on; a damaged one throws when that is met. */
interface PackedContent extends Closeable {

    /** Bytes of the image when unpacked, as the file claims; empty where only unpacking all of it tells. */
    OptionalLong claimedSize() throws IOException;

    /** The greatest place, at most {@code offset}, from which it can be unpacked; 0 where there is but the start. */
    long beginBefore(long offset) throws IOException;

    /** The unpacked bytes from a place that {@link #beginBefore} gave; ends the stream given before. */
    InputStream from(long begin) throws IOException;
}
