package bootmend.device;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.ReportedIOException;
import bootmend.fixtures.SparseDisk;
import de.waldheinz.fs.BlockDevice;
import de.waldheinz.fs.ReadOnlyException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The devices that lie over another device: write guard, partition window, overlay, recorder. */
class DeviceLayersTest {

    private final SparseDisk disk = filled(8192);

    @ParameterizedTest
    @CsvSource({"512, 512", "600, 10", "1023, 1", "2048, 1024", "512, 0"})
    void guardLetsPlannedWritesThrough(long offset, int length) throws IOException {
        guard().write(offset, ByteBuffer.allocate(length));

        assertThat(disk.toBytes(offset, length)).isEqualTo(new byte[length]);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 512",
        "511, 2",
        "1023, 2",
        "1024, 1",
        "512, 513",
        "3071, 2",
        "8191, 1",
        "9223372036854775807, 1",
        "9223372036854775000, 900"
    })
    void guardRefusesStrayWrites(long offset, int length) {
        SparseDisk before = disk.copy();

        assertThatThrownBy(() -> guard().write(offset, ByteBuffer.allocate(length)))
                .isInstanceOfSatisfying(ReportedIOException.class, e -> {
                    assertThat(e.report().kind()).isEqualTo(CardException.Kind.REFUSED);
                    assertThat(e).hasMessageContaining("stands in no plan");
                });
        assertThat(disk.differingSectors(before)).isEmpty();
    }

    @Test
    void windowShiftsAndStaysInside() throws IOException {
        PartitionWindow window = new PartitionWindow(disk, 1024, 2048);

        window.write(10, ByteBuffer.wrap(new byte[] {7, 8}));

        assertThat(disk.toBytes(1034, 2)).containsExactly(7, 8);
        assertThat(read(window, 10, 2)).containsExactly(7, 8);
        assertThat(window.getSize()).isEqualTo(2048);
        for (long offset : new long[] {-1, 2047, 2048, Long.MAX_VALUE - 1, Long.MIN_VALUE}) {
            assertThatThrownBy(() -> read(window, offset, 2)).isInstanceOf(OutsideDeviceException.class);
            assertThatThrownBy(() -> window.write(offset, ByteBuffer.allocate(2)))
                    .isInstanceOf(OutsideDeviceException.class);
        }
    }

    @Test
    void windowPastTheEndIsCutAndOneOutsideRefused() throws IOException {
        assertThat(new PartitionWindow(disk, 8000, Long.MAX_VALUE).getSize()).isEqualTo(192);
        assertThat(new PartitionWindow(disk, 8192, 10).getSize()).isZero();
        assertThat(new PartitionWindow(disk, 0, -5).getSize()).isZero();
        assertThatThrownBy(() -> new PartitionWindow(disk, 8193, 10)).isInstanceOf(OutsideDeviceException.class);
        assertThatThrownBy(() -> new PartitionWindow(disk, -1, 10)).isInstanceOf(OutsideDeviceException.class);
    }

    @Test
    void closingAWindowLeavesTheCardOpen() throws IOException {
        PartitionWindow window = new PartitionWindow(disk, 0, 512);

        window.close();

        assertThat(window.isClosed()).isTrue();
        assertThat(disk.isClosed()).isFalse();
    }

    @Property(tries = 300)
    void overlayReadsAsTheChangedDiskWould(@ForAll @IntRange(max = 8192) int from, @ForAll @IntRange(max = 8192) int to)
            throws IOException {
        Map<Long, byte[]> runs = Map.of(0L, ones(512), 1024L, ones(512), 1536L, ones(100), 8000L, ones(192));
        SparseDisk changed = disk.copy();
        runs.forEach(changed::patch);
        SparseDisk before = disk.copy();
        int offset = Math.min(from, to);
        int length = Math.abs(to - from);

        assertThat(read(new OverlayDevice(disk, runs), offset, length)).isEqualTo(changed.toBytes(offset, length));
        assertThat(disk.differingSectors(before)).isEmpty();
    }

    @Test
    void overlayTakesNoWrite() {
        OverlayDevice overlay = new OverlayDevice(disk, Map.of(0L, ones(512)));

        assertThat(overlay.isReadOnly()).isTrue();
        assertThatThrownBy(() -> overlay.write(0, ByteBuffer.allocate(1))).isInstanceOf(ReadOnlyException.class);
    }

    @Test
    void recorderKeepsOrderAndBytes() throws IOException {
        RecordingDevice recorder = new RecordingDevice(disk);

        read(recorder, 5, 10);
        recorder.write(512, ByteBuffer.wrap(new byte[] {1, 2, 3}));
        recorder.flush();

        assertThat(recorder.events()).hasSize(3);
        assertThat(recorder.reads()).containsExactly(new DeviceEvent.Read(5, 10));
        assertThat(recorder.writes()).singleElement().satisfies(write -> {
            assertThat(write.offset()).isEqualTo(512);
            assertThat(write.bytes()).containsExactly(1, 2, 3);
        });
        assertThat(recorder.events().get(2)).isEqualTo(new DeviceEvent.Force());
        assertThat(recorder.bytesRead()).isEqualTo(10);
    }

    private WriteGuard guard() {
        return new WriteGuard(disk, Map.of(512L, 512, 2048L, 1024));
    }

    private static byte[] read(BlockDevice device, long offset, int length) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(length);
        device.read(offset, buffer);
        return buffer.array();
    }

    private static SparseDisk filled(int size) {
        byte[] bytes = new byte[size];
        for (int i = 0; i < size; i++) {
            bytes[i] = (byte) (i % 251 + 1);
        }
        SparseDisk disk = new SparseDisk(size, 512);
        disk.patch(0, bytes);
        return disk;
    }

    private static byte[] ones(int length) {
        byte[] bytes = new byte[length];
        Arrays.fill(bytes, (byte) -1);
        return bytes;
    }
}
