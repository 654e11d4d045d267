package bootmend.device;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A tree laid out as in the kernel's proc(5) page (mountinfo, swaps) and its sysfs-block ABI page. */
class LinuxDisksTest {

    @TempDir
    private Path root;
    private LinuxDisks disks;

    @BeforeEach
    void layOut() throws IOException {
        disk("sdx", "sdx1", "sdx2");
        disk("mmcblk7", "mmcblk7p1");
        disk("loop3", "loop3p1");
        write("proc/self/mountinfo", "22 1 8:2 / / rw,relatime shared:1 - ext4 /dev/sda2 rw\n"
                + "23 22 0:20 / /proc rw - proc proc rw\nhalf a line\n");
        write("proc/swaps", "Filename\tType\tSize\tUsed\tPriority\n/dev/sda3 partition 1 0 -2\n");
        disks = new LinuxDisks(root.resolve("proc"), root.resolve("sys"));
    }

    @Test
    void cardThatNobodyUses() {
        assertThat(disks.useOf(Path.of("/dev/sdx"))).isEmpty();
        assertThat(disks.useOf(root.resolve("no-such-card.img"))).isEmpty();
    }

    @Test
    void mountedPartitionOfTheCard() throws IOException {
        mount("/dev/sdx1", "/media/room\\04012");

        assertThat(disks.useOf(Path.of("/dev/sdx"))).contains("/dev/sdx1 is mounted at /media/room 12");
        assertThat(disks.useOf(Path.of("/dev/sdx1"))).contains("/dev/sdx1 is mounted at /media/room 12");
        assertThat(disks.useOf(Path.of("/dev/sdx2"))).isEmpty();
        assertThat(disks.useOf(Path.of("/dev/mmcblk7"))).isEmpty();
    }

    @Test
    void swapOnTheCard() throws IOException {
        write("proc/swaps", "Filename Type Size Used Priority\n/dev/mmcblk7p1                partition\t1\t0\t-2\n");

        assertThat(disks.useOf(Path.of("/dev/mmcblk7"))).contains("/dev/mmcblk7p1 is used as swap space");
    }

    @Test
    void imageBehindALoopDevice() throws IOException {
        Path image = Files.write(root.resolve("card.img"), new byte[512]);
        write("sys/devices/loop3/loop/backing_file", image.toRealPath() + "\n");

        assertThat(disks.useOf(image)).contains("attached to this computer as /dev/loop3");

        mount("/dev/loop3p1", "/mnt");
        assertThat(disks.useOf(image)).contains("/dev/loop3p1 is mounted at /mnt");
        assertThat(disks.useOf(Files.write(root.resolve("other.img"), new byte[512]))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"4096, 4096", "512, 512", "100, 512", "6000, 512", "131072, 512", "many, 512"})
    void logicalBlockSize(String said, int expected) throws IOException {
        write("sys/devices/sdx/queue/logical_block_size", said + "\n");

        assertThat(disks.facts(Path.of("/dev/sdx")).orElseThrow().logicalSector()).isEqualTo(expected);
        assertThat(disks.facts(Path.of("/dev/sdx1")).orElseThrow().logicalSector()).as("a partition asks its disk").isEqualTo(expected);
    }

    @Test
    void systemWithoutTheseTrees() {
        LinuxDisks nothing = new LinuxDisks(root.resolve("none"), root.resolve("none"));

        assertThat(nothing.useOf(Path.of("/dev/sdx"))).isEmpty();
        assertThat(nothing.facts(Path.of("/dev/sdx"))).isEmpty();
    }

    private void mount(String source, String point) throws IOException {
        write("proc/self/mountinfo", "22 1 8:2 / / rw,relatime shared:1 - ext4 /dev/sda2 rw\n"
                + "40 22 8:17 / " + point + " rw,nosuid shared:9 - vfat " + source + " rw\n");
    }

    /** Class folders are links to where the device's own folder is, a partition's inside its disk's. */
    private void disk(String name, String... partitions) throws IOException {
        Path device = Files.createDirectories(root.resolve("sys/devices").resolve(name));
        link(name, device);
        for (String partition : partitions) {
            Path folder = Files.createDirectories(device.resolve(partition));
            Files.writeString(folder.resolve("partition"), "1\n");
            link(partition, folder);
        }
    }

    private void link(String name, Path target) throws IOException {
        Path folder = Files.createDirectories(root.resolve("sys/class/block"));
        Files.createSymbolicLink(folder.resolve(name), target);
    }

    private void write(String path, String text) throws IOException {
        Path file = root.resolve(path);
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
    }
}
