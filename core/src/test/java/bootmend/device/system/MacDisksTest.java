package bootmend.device.system;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
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
        assertThat(disks.facts(Path.of("/dev/rdisk4")))
                .contains(new DiskFacts(31914983424L, 512, 512, true, false, "sd"));
        assertThat(disks.runningSystemOn(Path.of("/dev/disk4"))).isEmpty();
    }

    @Test
    void theDiskTheSystemRunsFrom() {
        assertThat(disks.facts(Path.of("/dev/disk3")))
                .contains(new DiskFacts(500277792768L, 4096, 4096, false, false, "pci-express"));
        assertThat(disks.runningSystemOn(Path.of("/dev/rdisk3"))).contains("/dev/disk3 is mounted at /");
    }

    @Test
    void aLockedCard() {
        info("disk4", CARD.replace("<key>WritableMedia</key><true/>", "<key>WritableMedia</key><false/>"));

        assertThat(disks.facts(Path.of("/dev/disk4")).orElseThrow().readOnly()).isTrue();
    }

    @Test
    void aCardIsUnmountedThroughTheSystemAndRefusedWhereThatFails() throws CardException {
        answer("unmountDisk disk4", 0, "Unmount of all volumes on disk4 was successful\n");
        disks.hold(Path.of("/dev/rdisk4"));

        answer("unmountDisk disk4", 1, "Unmount of disk4 failed: at least one volume could not be unmounted\n");
        assertThatThrownBy(() -> disks.hold(Path.of("/dev/rdisk4")))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("in use: Unmount of disk4 failed");
    }

    @Test
    void ejectsTheWholeDisk() {
        answer("eject disk4", 0, "Disk disk4 ejected\n");
        assertThat(disks.eject(Path.of("/dev/disk4")).ejected()).isTrue();

        answer("eject disk4", 1, "Volume failed to eject\n");
        assertThat(disks.eject(Path.of("/dev/disk4")).words()).contains("Volume failed to eject");
    }

    @Test
    void answersThatAreNoneAreNotTakenForOne() {
        answer("info -plist disk9", 1, "Could not find disk: disk9\n");
        info("disk8", "not a list");

        assertThat(disks.facts(Path.of("/dev/disk9"))).isEmpty();
        assertThat(disks.facts(Path.of("/dev/disk8"))).isEmpty();
        assertThat(disks.deviceOf("disk4")).isEqualTo(Path.of("/dev/disk4"));
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
