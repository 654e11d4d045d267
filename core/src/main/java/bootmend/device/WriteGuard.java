package bootmend.device;

import bootmend.CardException;
import bootmend.ReportedIOException;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Map;
import java.util.TreeMap;

/** Lets through to a device only writes that lie wholly inside runs of bytes named beforehand. */
public final class WriteGuard extends ForwardingDevice {

    private final TreeMap<Long, Integer> allowed;

    /** @param allowed start of each run that may be written, to its length in bytes */
    public WriteGuard(BlockDevice device, Map<Long, Integer> allowed) {
        super(device);
        this.allowed = new TreeMap<>(allowed);
    }

    @Override
    public void write(long offset, ByteBuffer src) throws IOException {
        Map.Entry<Long, Integer> run = allowed.floorEntry(offset);
        if (run == null || src.remaining() > run.getValue() - (offset - run.getKey())) {
            throw new ReportedIOException(CardException.refused(
                    "a write of " + src.remaining() + " bytes at byte " + offset
                            + " stands in no plan, so it was not made",
                    "This is a fault in bootmend; the card is as it was at that place. Please report it."));
        }
        device().write(offset, src);
    }
}
