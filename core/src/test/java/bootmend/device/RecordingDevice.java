package bootmend.device;

import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;

/** Passes every access on and keeps it in a list, for counting in tests and for replaying cuts. */
public final class RecordingDevice extends ForwardingDevice {

    private final List<DeviceEvent> events = new ArrayList<>();

    public RecordingDevice(BlockDevice device) {
        super(device);
    }

    /** Every access so far, oldest first. */
    public List<DeviceEvent> events() {
        return List.copyOf(events);
    }

    public List<DeviceEvent.Read> reads() {
        return events.stream()
                .filter(DeviceEvent.Read.class::isInstance)
                .map(DeviceEvent.Read.class::cast)
                .toList();
    }

    public List<DeviceEvent.Write> writes() {
        return events.stream()
                .filter(DeviceEvent.Write.class::isInstance)
                .map(DeviceEvent.Write.class::cast)
                .toList();
    }

    /** Bytes read so far, counted once for each read. */
    public long bytesRead() {
        return reads().stream().mapToLong(DeviceEvent.Read::length).sum();
    }

    @Override
    public void read(long offset, ByteBuffer dest) throws IOException {
        events.add(new DeviceEvent.Read(offset, dest.remaining()));
        device().read(offset, dest);
    }

    @Override
    public void write(long offset, ByteBuffer src) throws IOException {
        byte[] bytes = new byte[src.remaining()];
        src.duplicate().get(bytes);
        device().write(offset, src);
        events.add(new DeviceEvent.Write(offset, bytes));
    }

    @Override
    public void flush() throws IOException {
        device().flush();
        events.add(new DeviceEvent.Force());
    }
}
