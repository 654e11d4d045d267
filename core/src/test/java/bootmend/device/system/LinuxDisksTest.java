package bootmend.device.system;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.device.CardIdentity;
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
        write(
                "proc/self/mountinfo",
                "22 1 8:2 / / rw,relatime shared:1 - ext4 /dev/sda2 rw\n"
                        + "23 22 0:20 / /proc rw - proc proc rw\nhalf a line\n");
        write("proc/swaps", "Filename\tType\tSize\tUsed\tPriority\n/dev/sda3 partition 1 0 -2\n");
        disks = new LinuxDisks(root.resolve("proc"), root.resolve("sys"));
    }

    @Test
    void cardThatNobodyUses() {
        assertThat(disks.useOf("/dev/sdx")).isEmpty();
        assertThat(disks.useOfImage(root.resolve("no-such-card.img"))).isEmpty();
    }

    @Test
    void mountedPartitionOfTheCard() throws IOException {
        mount("/dev/sdx1", "/media/room\\04012");

        assertThat(disks.useOf("/dev/sdx")).contains("/dev/sdx1 is mounted at /media/room 12");
        assertThat(disks.useOf("/dev/sdx1")).contains("/dev/sdx1 is mounted at /media/room 12");
        assertThat(disks.useOf("/dev/sdx2")).isEmpty();
        assertThat(disks.useOf("/dev/mmcblk7")).isEmpty();
    }

    @Test
    void swapOnTheCard() throws IOException {
        write("proc/swaps", "Filename Type Size Used Priority\n/dev/mmcblk7p1                partition\t1\t0\t-2\n");

        assertThat(disks.useOf("/dev/mmcblk7")).contains("/dev/mmcblk7p1 is used as swap space");
    }

    @Test
    void imageBehindALoopDevice() throws IOException {
        Path image = Files.write(root.resolve("card.img"), new byte[512]);
        write("sys/devices/loop3/loop/backing_file", image.toRealPath() + "\n");

        assertThat(disks.useOfImage(image)).contains("attached to this computer as /dev/loop3");

        mount("/dev/loop3p1", "/mnt");
        assertThat(disks.useOfImage(image)).contains("/dev/loop3p1 is mounted at /mnt");
        assertThat(disks.useOfImage(Files.write(root.resolve("other.img"), new byte[512])))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"4096, 4096", "512, 512", "100, 512", "6000, 512", "131072, 512", "many, 512"})
    void logicalBlockSize(String said, int expected) throws IOException {
        write("sys/devices/sdx/queue/logical_block_size", said + "\n");

        assertThat(disks.facts("/dev/sdx").orElseThrow().logicalSector()).isEqualTo(expected);
        assertThat(disks.facts("/dev/sdx1").orElseThrow().logicalSector())
                .as("a partition asks its disk")
                .isEqualTo(expected);
    }

    @Test
    void systemWithoutTheseTrees() {
        LinuxDisks nothing = new LinuxDisks(root.resolve("none"), root.resolve("none"));

        assertThat(nothing.useOf("/dev/sdx")).isEmpty();
        assertThat(nothing.facts("/dev/sdx")).isEmpty();
    }

    @Test
    void whatTheRunningSystemIsOnIsLeftAlone() throws IOException {
        disk("sda", "sda1", "sda2");
        assertThat(disks.runningSystemOn("/dev/sda")).contains("/dev/sda2 is mounted at /");
        assertThat(disks.runningSystemOn("/dev/sda1"))
                .as("another part of that disk")
                .isPresent();
        assertThat(disks.runningSystemOn("/dev/sdx")).isEmpty();
    }

    @Test
    void aSystemOnACombinedOrUnnamedDeviceIsFoundByWhatIsBelowIt() throws IOException {
        disk("dm-0");
        Files.createDirectories(root.resolve("sys/devices/dm-0/slaves/mmcblk7p1"));
        write("proc/self/mountinfo", "22 1 253:0 / / rw - ext4 /dev/root rw\n");
        Files.createDirectories(root.resolve("sys/dev/block"));
        Files.createSymbolicLink(root.resolve("sys/dev/block/253:0"), root.resolve("sys/devices/dm-0"));

        assertThat(disks.runningSystemOn("/dev/mmcblk7")).contains("/dev/root is mounted at /");
        assertThat(disks.runningSystemOn("/dev/sdx")).isEmpty();
    }

    /** The drivers' words: sysfs-block ABI page, "removable"; the kernel's mmc documentation, "mmc-dev-attrs", "type". */
    @Test
    void whatCanBeTakenOut() throws IOException {
        assertThat(facts("sdx").removable()).isFalse();
        write("sys/devices/sdx/removable", "1\n");
        assertThat(facts("sdx1").removable()).isTrue();
        write("sys/devices/mmcblk7/device/type", "MMC\n");
        assertThat(facts("mmcblk7").removable()).isFalse();
        assertThat(facts("mmcblk7").bus()).isEqualTo("mmc");
        write("sys/devices/mmcblk7/device/type", "SD\n");
        assertThat(facts("mmcblk7").removable()).isTrue();
        assertThat(facts("mmcblk7").bus()).isEqualTo("sd");
        write("sys/devices/loop3/loop/backing_file", "/home/lab/card.img\n");
        assertThat(facts("loop3").removable()).isTrue();
        write("sys/devices/loop3/loop/backing_file", "/dev/sda\n");
        assertThat(facts("loop3").removable()).isFalse();
    }

    @Test
    void sizeLockAndPhysicalSector() throws IOException {
        write("sys/devices/sdx/size", "62333952\n");
        write("sys/devices/sdx/ro", "1\n");
        write("sys/devices/sdx/queue/physical_block_size", "4096\n");

        assertThat(facts("sdx").bytes()).isEqualTo(62333952L * 512);
        assertThat(facts("sdx").readOnly()).isTrue();
        assertThat(facts("sdx1").readOnly()).as("a part of a locked card").isTrue();
        assertThat(facts("sdx").logicalSector()).isEqualTo(512);
        assertThat(facts("sdx").physicalSector()).isEqualTo(4096);
        assertThat(facts("mmcblk7").readOnly()).isFalse();
        assertThat(disks.facts("/dev/sdz")).isEmpty();
    }

    /** The names are those of the kernel's pages on sysfs: "diskseq", the MMC attributes' "cid", a USB device's "serial". */
    @Test
    void whatTellsOneMediumFromAnother() throws IOException {
        write("sys/devices/sdx/dev", "8:16\n");
        write("sys/devices/sdx/diskseq", "23\n");
        CardIdentity before = disks.medium("/dev/sdx");
        assertThat(before.isStill(disks.medium("/dev/sdx"))).isTrue();

        write("sys/devices/sdx/diskseq", "24\n");
        assertThat(before.isStill(disks.medium("/dev/sdx"))).isFalse();
        assertThat(before.cardId()).isEmpty();

        String cid = "035344534c3332478012345678015a00".substring(0, 32);
        write("sys/devices/mmcblk7/device/cid", cid + "\n");
        assertThat(disks.medium("/dev/mmcblk7").cardId()).contains(cid);
        assertThat(disks.medium("/dev/mmcblk7p1").cardId())
                .as("of the whole card")
                .contains(cid);
        write("sys/devices/mmcblk7/device/cid", "none\n");
        assertThat(disks.medium("/dev/mmcblk7").cardId()).isEmpty();
    }

    @Test
    void theReaderAndItsSlot() throws IOException {
        write("sys/devices/usb1/1-2/serial", "000000001206\n");
        write("sys/devices/usb1/1-2/idVendor", "0bda\n");
        Path unit = Files.createDirectories(root.resolve("sys/devices/usb1/1-2/host6/target6:0:0/6:0:0:1"));
        Files.createSymbolicLink(root.resolve("sys/devices/sdx/device"), unit);
        assertThat(disks.medium("/dev/sdx").reader()).contains("000000001206 slot 1");

        Path slot = Files.createDirectories(root.resolve("sys/devices/mmc_host/mmc0/mmc0:aaaa"));
        Files.createSymbolicLink(root.resolve("sys/devices/mmcblk7/device"), slot);
        assertThat(disks.medium("/dev/mmcblk7").reader()).contains("mmc0");
    }

    private DiskFacts facts(String name) {
        return disks.facts("/dev/" + name).orElseThrow();
    }

    private void mount(String source, String point) throws IOException {
        write(
                "proc/self/mountinfo",
                "22 1 8:2 / / rw,relatime shared:1 - ext4 /dev/sda2 rw\n" + "40 22 8:17 / " + point
                        + " rw,nosuid shared:9 - vfat " + source + " rw\n");
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
