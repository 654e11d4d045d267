package bootmend.device;

import de.waldheinz.fs.BlockDevice;
import de.waldheinz.fs.ReadOnlyException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Map;
import java.util.TreeMap;

/** A read-only view of a device as it would be with some runs of bytes replaced. */
public final class OverlayDevice extends ForwardingDevice {

    private final TreeMap<Long, byte[]> runs;

    /** @param runs start of each replaced run to its bytes; runs do not overlap */
    public OverlayDevice(BlockDevice device, Map<Long, byte[]> runs) {
        super(device);
        this.runs = new TreeMap<>(runs);
    }

    @Override
    public void read(long offset, ByteBuffer dest) throws IOException {
        ByteBuffer target = dest.duplicate();
        int length = dest.remaining();
        device().read(offset, dest);
        Long first = runs.floorKey(offset);
        for (Map.Entry<Long, byte[]> run :
                runs.subMap(first == null ? offset : first, offset + length).entrySet()) {
            long from = Math.max(offset, run.getKey());
            long to = Math.min(offset + length, run.getKey() + run.getValue().length);
            if (from < to) {
                ByteBuffer part = target.duplicate();
                part.position(target.position() + (int) (from - offset));
                part.put(run.getValue(), (int) (from - run.getKey()), (int) (to - from));
            }
        }
    }

    @Override
    public void write(long offset, ByteBuffer src) {
        throw new ReadOnlyException();
    }

    @Override
    public void flush() {
        // Nothing was written.
    }

    @Override
    public void close() {
        // The device below belongs to whoever opened it.
    }

    @Override
    public boolean isReadOnly() {
        return true;
    }
}
