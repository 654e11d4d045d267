package bootmend.device.system;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Trees laid out as Linux lays them: proc(5), mountinfo; /dev/disk/by-uuid by common practice. */
class VolumeSerialTest {

    @TempDir
    private Path root;

    @Test
    void aFatVolumesSerialIsItsNameAmongTheUuids() throws IOException {
        Files.createDirectories(root.resolve("proc/self"));
        Files.createDirectories(root.resolve("by-uuid"));
        Files.createDirectories(root.resolve("dev"));
        Files.writeString(
                root.resolve("proc/self/mountinfo"),
                "40 22 8:17 / /media/LABBOOT rw - vfat /dev/sdx1 rw\n41 22 8:18 / /media/root rw - ext4 /dev/sdx2 rw\n");
        name("5C01-AB01", "sdx1");
        name("0f0e3c7e-6c55-4d61-8b4a-0a6b6b1d2c3d", "sdx2");

        assertThat(serial("/media/LABBOOT")).isEqualTo(0x5C01AB01L);
        assertThat(serial("/media/root")).isZero();
        assertThat(serial("/media/LABBOOT/overlays")).isZero();
    }

    private void name(String uuid, String device) throws IOException {
        Files.createSymbolicLink(
                root.resolve("by-uuid").resolve(uuid),
                Files.createFile(root.resolve("dev").resolve(device)));
    }

    private long serial(String folder) {
        return VolumeSerial.of(
                Path.of(folder), new LinuxMounts(root.resolve("proc"), root.resolve("sys")), root.resolve("by-uuid"));
    }
}
