package bootmend.device.system;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Answers written down from the format that diskutil(8) and the property list's document type describe, never taken from
 * a running system (value from memory).
 */
class MacDisksTest {

    private static final String CARD = list("""
            <key>BusProtocol</key><string>Secure Digital</string>
            <key>Content</key><string>FDisk_partition_scheme</string>
            <key>DeviceBlockSize</key><integer>512</integer>
            <key>Ejectable</key><true/>
            <key>Internal</key><true/>
            <key>ParentWholeDisk</key><string>disk4</string>
            <key>RemovableMedia</key><true/>
            <key>Slices</key><array><dict><key>TotalSize</key><integer>1</integer></dict></array>
            <key>TotalSize</key><integer>31914983424</integer>
            <key>WritableMedia</key><true/>""");
    private static final String BUILT_IN = list("""
            <key>BusProtocol</key><string>PCI-Express</string>
            <key>DeviceBlockSize</key><integer>4096</integer>
            <key>Ejectable</key><false/>
            <key>Internal</key><true/>
            <key>ParentWholeDisk</key><string>disk3</string>
            <key>RemovableMedia</key><false/>
            <key>TotalSize</key><integer>500277792768</integer>
            <key>WritableMedia</key><true/>""");

    private final Map<String, Programs.Result> answers = new HashMap<>();
    private final MacDisks disks = new MacDisks(command -> {
        Programs.Result answer = answers.get(String.join(" ", command));
        if (answer == null) {
            throw new IOException("unexpected: " + command);
        }
        return answer;
    });

    MacDisksTest() {
        info("disk4", CARD);
        info("disk3", BUILT_IN);
        info("/", BUILT_IN);
    }

    @Test
    void aCardInABuiltInSlot() {
        assertThat(disks.facts("/dev/rdisk4")).contains(new DiskFacts(31914983424L, 512, 512, true, false, "sd"));
        assertThat(disks.runningSystemOn("/dev/disk4")).isEmpty();
    }

    @Test
    void theDiskTheSystemRunsFrom() {
        assertThat(disks.facts("/dev/disk3"))
                .contains(new DiskFacts(500277792768L, 4096, 4096, false, false, "pci-express"));
        assertThat(disks.runningSystemOn("/dev/rdisk3")).contains("/dev/disk3 holds what is mounted at /");
    }

    @Test
    void aLockedCard() {
        info("disk4", CARD.replace("<key>WritableMedia</key><true/>", "<key>WritableMedia</key><false/>"));

        assertThat(disks.facts("/dev/disk4").orElseThrow().readOnly()).isTrue();
    }

    @Test
    void aCardIsUnmountedThroughTheSystemAndRefusedWhereThatFails() throws CardException {
        answer("unmountDisk disk4", 0, "Unmount of all volumes on disk4 was successful\n");
        disks.hold("/dev/rdisk4");

        answer("unmountDisk disk4", 1, "Unmount of disk4 failed: at least one volume could not be unmounted\n");
        assertThatThrownBy(() -> disks.hold("/dev/rdisk4"))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("in use: Unmount of disk4 failed");
    }

    @Test
    void ejectsTheWholeDisk() {
        answer("eject disk4", 0, "Disk disk4 ejected\n");
        assertThat(disks.eject("/dev/disk4").ejected()).isTrue();

        answer("eject disk4", 1, "Volume failed to eject\n");
        assertThat(disks.eject("/dev/disk4").words()).contains("Volume failed to eject");
    }

    @Test
    void answersThatAreNoneAreNotTakenForOne() {
        answer("info -plist disk9", 1, "Could not find disk: disk9\n");
        info("disk8", "not a list");

        assertThat(disks.facts("/dev/disk9")).isEmpty();
        assertThat(disks.facts("/dev/disk8")).isEmpty();
        assertThat(disks.runningSystemOn("/dev/disk9")).isEmpty();
    }

    /** By the raw node, so that what is read back comes from the card. */
    @Test
    void aDiskIsCalledByItsRawNode() {
        assertThat(disks.deviceOf("disk4").text()).isEqualTo("/dev/rdisk4");
        assertThat(disks.deviceOf("/dev/disk4s1").text()).isEqualTo("/dev/rdisk4s1");
        assertThat(disks.deviceOf("/dev/rdisk4").text()).isEqualTo("/dev/rdisk4");
    }

    /** The system's volume is on a disk that is made up of a part of a real one; neither is a card. */
    @Test
    void theDiskUnderASynthesisedSystemVolume() {
        info("/", list("""
                <key>APFSPhysicalStores</key>
                <array><dict><key>APFSPhysicalStore</key><string>disk0s2</string></dict></array>
                <key>ParentWholeDisk</key><string>disk3</string>"""));
        info("disk0", BUILT_IN.replace("disk3", "disk0"));

        assertThat(disks.runningSystemOn("/dev/rdisk0")).isPresent();
        assertThat(disks.runningSystemOn("/dev/rdisk3")).isPresent();
        assertThat(disks.runningSystemOn("/dev/rdisk0s1"))
                .as("not told, so by its name")
                .isPresent();
        assertThat(disks.runningSystemOn("/dev/rdisk4")).isEmpty();
    }

    /** An external disk can be ejected as well; only what comes out of its drive is taken for a card. */
    @Test
    void whatIsTakenForACard() {
        String external = CARD.replace("<key>Internal</key><true/>", "<key>Internal</key><false/>")
                .replace("Secure Digital", "USB");
        info("disk5", external);
        assertThat(disks.facts("/dev/disk5").orElseThrow().removable())
                .as("a card in a reader")
                .isTrue();

        info("disk5", external.replace("<key>RemovableMedia</key><true/>", "<key>RemovableMedia</key><false/>"));
        assertThat(disks.facts("/dev/disk5").orElseThrow().removable())
                .as("a disk on a cable")
                .isFalse();

        info(
                "disk5",
                external.replace("<key>RemovableMedia</key><true/>", "<key>RemovableMedia</key><false/>")
                        .replace("USB", "Disk Image"));
        assertThat(disks.facts("/dev/disk5").orElseThrow().removable())
                .as("an attached image")
                .isTrue();
    }

    /** Where the general list is empty, because its helper does not load. */
    @Test
    void theSystemsOwnListStandsIn() {
        answer("list -plist", 0, list("""
                <key>AllDisksAndPartitions</key>
                <array><dict>
                  <key>DeviceIdentifier</key><string>disk4</string>
                  <key>Partitions</key><array><dict>
                    <key>DeviceIdentifier</key><string>disk4s1</string>
                    <key>MountPoint</key><string>/Volumes/boot</string>
                    <key>Size</key><integer>268435456</integer>
                    <key>VolumeName</key><string>boot</string>
                  </dict></array>
                </dict></array>"""));

        assertThat(disks.unlisted(List.of())).singleElement().satisfies(disk -> {
            assertThat(disk.name().text()).isEqualTo("/dev/rdisk4");
            assertThat(disk.removable()).isTrue();
            assertThat(disk.partitions().get(0).mountedAt()).containsExactly("/Volumes/boot");
        });
        assertThat(disks.unlisted(List.of(disks.deviceOf("disk4")))).isEmpty();
    }

    private void info(String disk, String xml) {
        answer("info -plist " + disk, 0, xml);
    }

    private void answer(String what, int code, String output) {
        answers.put("diskutil " + what, new Programs.Result(code, output, ""));
    }

    private static String list(String keys) {
        return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                + "<!DOCTYPE plist PUBLIC \"-//PLIST 1.0//EN\" \"http://localhost/PropertyList-1.0.dtd\">\n"
                + "<plist version=\"1.0\">\n<dict>\n" + keys + "\n</dict>\n</plist>\n";
    }
}
