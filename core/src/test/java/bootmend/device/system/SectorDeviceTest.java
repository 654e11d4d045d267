package bootmend.device.system;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.device.OutsideDeviceException;
import de.waldheinz.fs.ReadOnlyException;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SectorDeviceTest {

    private static final int SIZE = 5 * 4096;

    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource({
        "0, 4096",
        "4096, 8192",
        "1, 1",
        "4095, 2",
        "100, 9000",
        "0, 512",
        "20479, 1",
        "0, 20480",
        "512, 0",
        "3, 20477"
    })
    void readsAndWritesAnyRunOnADeviceThatTakesOnlyWholeSectors(int offset, int length) throws IOException {
        for (int sector : new int[] {512, 4096}) {
            readsAndWrites(offset, length, sector);
        }
    }

    private void readsAndWrites(int offset, int length, int sector) throws IOException {
        byte[] content = noise(1, SIZE);
        byte[] change = noise(2, length);
        Path file = Files.write(folder.resolve("disk"), content);
        try (StubbornFile stubborn = new StubbornFile(open(file), sector)) {
            SectorDevice device = new SectorDevice(stubborn, SIZE, sector, sector, false, DiskHold.NONE);

            ByteBuffer read = ByteBuffer.allocate(length);
            device.read(offset, read);
            assertThat(read.array()).isEqualTo(Arrays.copyOfRange(content, offset, offset + length));
            assertThat(read.hasRemaining()).isFalse();

            ByteBuffer source = ByteBuffer.wrap(change);
            device.write(offset, source);
            assertThat(source.hasRemaining()).isFalse();
            device.flush();
            assertThat(stubborn.syncs()).isOne();
        }
        System.arraycopy(change, 0, content, offset, length);
        assertThat(Files.readAllBytes(file)).isEqualTo(content);
    }

    @Test
    void imageWhoseLengthIsNoWholeSectorIsReadToItsEnd() throws IOException {
        byte[] content = noise(1, 1000);
        Path file = Files.write(folder.resolve("image"), content);
        try (FileChannel channel = open(file)) {
            ByteBuffer read = ByteBuffer.allocate(10);
            new SectorDevice(new ChannelFile(channel), 1000, 512, 512, false, DiskHold.NONE).read(985, read);
            assertThat(read.array()).isEqualTo(Arrays.copyOfRange(content, 985, 995));
        }
    }

    @ParameterizedTest
    @CsvSource({"-1, 1", "20480, 1", "20479, 2", "9223372036854775807, 1", "0, 20481"})
    void outsideIsRefused(long offset, int length) throws IOException {
        Path file = Files.write(folder.resolve("disk"), noise(1, SIZE));
        try (FileChannel channel = open(file)) {
            SectorDevice device = new SectorDevice(new ChannelFile(channel), SIZE, 512, 512, false, DiskHold.NONE);
            assertThatThrownBy(() -> device.read(offset, ByteBuffer.allocate(length)))
                    .isInstanceOf(OutsideDeviceException.class);
            assertThatThrownBy(() -> device.write(offset, ByteBuffer.allocate(length)))
                    .isInstanceOf(OutsideDeviceException.class);
        }
        assertThat(Files.readAllBytes(file)).isEqualTo(noise(1, SIZE));
    }

    /** The end is looked for where nobody tells it; a medium of one sector and one of many. */
    @ParameterizedTest
    @CsvSource({"512, 512", "512, 20480", "4096, 20480", "4096, 4096", "512, 0", "512, 1048576"})
    void theSizeIsFoundWhereNobodyTellsIt(int sector, int size) throws IOException {
        Path file = Files.write(folder.resolve("disk"), new byte[size]);
        try (StubbornFile stubborn = new StubbornFile(open(file), sector)) {
            assertThat(new SizeProbe(stubborn, sector).size()).isEqualTo(size);
        }
    }

    @Test
    void mediumThatEndsEarlyIsNamed() throws IOException {
        Path file = Files.write(folder.resolve("disk"), noise(1, 1000));
        try (FileChannel channel = open(file)) {
            SectorDevice device = new SectorDevice(new ChannelFile(channel), SIZE, 512, 1, false, DiskHold.NONE);
            assertThatThrownBy(() -> device.read(500, ByteBuffer.allocate(1000)))
                    .isInstanceOf(EOFException.class)
                    .hasMessageContaining("ended at byte 1000");
        }
    }

    @Test
    void readOnlyTakesNoWrite() throws IOException {
        Path file = Files.write(folder.resolve("disk"), noise(1, SIZE));
        try (FileChannel channel = open(file)) {
            SectorDevice device = new SectorDevice(new ChannelFile(channel), SIZE, 512, 1, true, DiskHold.NONE);
            assertThat(device.isReadOnly()).isTrue();
            assertThatThrownBy(() -> device.write(0, ByteBuffer.allocate(1))).isInstanceOf(ReadOnlyException.class);
        }
    }

    private static FileChannel open(Path file) throws IOException {
        return FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE);
    }

    private static byte[] noise(int seed, int length) {
        byte[] bytes = new byte[length];
        new SplittableRandom(seed).nextBytes(bytes);
        return bytes;
    }
}
