package bootmend.device.system;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.sun.jna.LastErrorException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Reads, writes, sync and lock through this computer's own C library, on Linux, whose calls of these names are the same. */
class PosixDiskTest {

    @TempDir
    private Path folder;

    private final PosixDisk.Control linux = new PosixDisk.Control() {
        @Override
        public void syncMedium(PosixDisk.CLibrary library, int descriptor) {
            // Linux's fsync does both.
        }

        @Override
        public long size(PosixDisk.CLibrary library, int descriptor) {
            return 0;
        }

        @Override
        public boolean isNotOffered(int error) {
            return false;
        }

        @Override
        public boolean isLocked(int error) {
            return error == 11;
        }
    };

    private PosixDisk.CLibrary library;

    @BeforeEach
    void needsLinux() throws IOException {
        assumeTrue(
                System.getProperty("os.name").startsWith("Linux")
                        && System.getProperty("os.arch").contains("64"),
                "not a 64-bit Linux: skipped");
        library = PosixDisk.load();
    }

    @Test
    void whatIsWrittenIsRead() throws IOException {
        byte[] content = noise(1, 3 << 20);
        byte[] change = noise(2, (1 << 20) + 777);
        Path file = Files.write(folder.resolve("disk"), content);
        RawFile disk = PosixDisk.open(library, linux, file.toString(), true);
        SectorDevice device = new SectorDevice(disk, content.length, 512, 512, false, DiskHold.NONE);

        device.write(4321, ByteBuffer.wrap(change));
        device.flush();
        System.arraycopy(change, 0, content, 4321, change.length);
        ByteBuffer read = ByteBuffer.allocate(content.length - 99);
        device.read(99, read);
        device.close();

        assertThat(Arrays.equals(read.array(), Arrays.copyOfRange(content, 99, content.length)))
                .isTrue();
        assertThat(Arrays.equals(Files.readAllBytes(file), content)).isTrue();
        assertThat(device.isClosed()).isTrue();
        assertThatThrownBy(() -> device.read(0, ByteBuffer.allocate(512))).isInstanceOf(IOException.class);
    }

    @Test
    void theEndIsNoError() throws IOException {
        Path file = Files.write(folder.resolve("disk"), new byte[1024]);
        try (RawFile disk = PosixDisk.open(library, linux, file.toString(), false)) {
            assertThat(disk.read(ByteBuffer.allocate(512), 1024)).isZero();
            assertThat(new SizeProbe(disk, 512).size()).isEqualTo(1024);
            assertThatThrownBy(() -> disk.write(ByteBuffer.allocate(512), 0)).isInstanceOf(IOException.class);
        }
    }

    @Test
    void onlyOneHasTheLock() throws IOException {
        Path file = Files.write(folder.resolve("disk"), new byte[1024]);
        RawFile first = PosixDisk.open(library, linux, file.toString(), true);
        try (RawFile second = PosixDisk.open(library, linux, file.toString(), true)) {
            assertThat(first.lock()).isTrue();
            assertThat(second.lock()).isFalse();
            first.close();
            assertThat(second.lock()).isTrue();
        }
    }

    @Test
    void nothingIsMadeWhereThereIsNothing() {
        Path none = folder.resolve("none");

        assertThatThrownBy(() -> PosixDisk.open(library, linux, none.toString(), true))
                .isInstanceOf(LastErrorException.class);
        assertThat(none).doesNotExist();
    }

    private static byte[] noise(int seed, int length) {
        byte[] bytes = new byte[length];
        new SplittableRandom(seed).nextBytes(bytes);
        return bytes;
    }
}
