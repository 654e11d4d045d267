package bootmend.device.system;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.ReportedIOException;
import java.io.IOException;
import java.nio.ByteBuffer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A raw disk of macOS, on recorded answers: error numbers of that system's errno.h (value from memory), never taken from a
 * running one.
 */
class MacDiskAccessTest {

    private static final int EIO = 5;
    private static final int EINTR = 4;
    private static final int ENOTSUP = 45;
    private static final String SYNCHRONIZE_CACHE = "ioctl 20006416";

    private final RecordedLibrary library = new RecordedLibrary();
    private final MacDisks disks = new MacDisks(command -> {
        throw new IOException("not asked");
    });

    @Test
    void theRawNodeIsOpenedWhicheverWasNamed() throws IOException {
        for (String name : new String[] {"/dev/disk4", "/dev/rdisk4"}) {
            disks.open(library, name, true).close();
        }
        disks.open(library, "/dev/disk4", false).close();

        assertThat(library.asked())
                .containsExactly(
                        "open /dev/rdisk4 2", "close", "open /dev/rdisk4 2", "close", "open /dev/rdisk4 0", "close");
    }

    @Test
    void aSyncIsBothForTheSystemAndForTheDisk() throws IOException {
        try (RawFile disk = disks.open(library, "/dev/disk4", true)) {
            disk.sync();
            assertThat(disk.size()).isEqualTo(62333952L * 512);
        }
        assertThat(library.asked()).containsSubsequence("fsync", SYNCHRONIZE_CACHE);
    }

    @Test
    void aDiskWithoutACacheNeedsNoSecondHalf() throws IOException {
        library.fails(SYNCHRONIZE_CACHE, ENOTSUP);
        try (RawFile disk = disks.open(library, "/dev/disk4", true)) {
            disk.sync();
        }
        assertThat(library.asked()).contains("fsync", SYNCHRONIZE_CACHE);
    }

    /** 5 is an I/O error; 25 says that the node takes no such request. */
    @ParameterizedTest
    @CsvSource({"fsync, 5", "fsync, 25", SYNCHRONIZE_CACHE + ", 5", SYNCHRONIZE_CACHE + ", 25"})
    void whatCannotBeSyncedIsTold(String call, int error) throws IOException {
        library.fails(call, error);
        try (RawFile disk = disks.open(library, "/dev/disk4", true)) {
            assertThatThrownBy(disk::sync).isInstanceOf(IOException.class);
        }
    }

    @ParameterizedTest
    @CsvSource({"1, privacy", "13, no right to write", "16, in use", "30, write-protected", "6, could not be opened"})
    void whyItCannotBeOpened(int error, String words) {
        library.fails("open /dev/rdisk4 2", error);

        assertThatThrownBy(() -> disks.open(library, "/dev/disk4", true))
                .isInstanceOf(ReportedIOException.class)
                .hasMessageContaining(words);
    }

    @ParameterizedTest
    @CsvSource({"35, false", "45, true"})
    void aLockThatAnotherHasAndOneThatIsNotOffered(int error, boolean mayGoOn) throws IOException {
        library.fails("flock", error);
        try (RawFile disk = disks.open(library, "/dev/disk4", true)) {
            assertThat(disk.lock()).isEqualTo(mayGoOn);
        }
    }

    @Test
    void aLockThatFailsOtherwiseIsAnError() throws IOException {
        library.fails("flock", EIO);
        try (RawFile disk = disks.open(library, "/dev/disk4", true)) {
            assertThatThrownBy(disk::lock).isInstanceOf(IOException.class);
        }
    }

    @Test
    void onlyWholeSectorsAreAskedForAtMostAMebibyteAtOnce() throws IOException {
        SectorDevice device =
                new SectorDevice(disks.open(library, "/dev/disk4", true), 1 << 24, 512, 512, false, DiskHold.NONE);
        device.read(700, ByteBuffer.allocate(100));
        device.write(0, ByteBuffer.allocate(3 << 19));
        device.close();

        assertThat(library.asked())
                .containsSubsequence("pread 512 512", "pwrite 1048576 0", "pwrite 524288 1048576", "close")
                .doesNotContain("pread 100 700");
    }

    @Test
    void aCallThatASignalBrokeOffIsMadeAgain() throws IOException {
        library.failsOnce("fsync", EINTR);
        try (RawFile disk = disks.open(library, "/dev/disk4", true)) {
            disk.sync();
        }
        assertThat(library.asked()).containsSubsequence("fsync", "fsync", SYNCHRONIZE_CACHE);
    }
}
