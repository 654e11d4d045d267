package bootmend.device.system;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Answers as the pages of the calls describe them, never taken from a running system (value from memory). */
class WindowsDisksTest {

    private static final Path CARD = Path.of("\\\\.\\PHYSICALDRIVE2");
    private static final Path SYSTEM = Path.of("\\\\.\\PhysicalDrive0");

    private final List<String> events = new ArrayList<>();
    private String busy = "";

    private final WindowsDisks disks = new WindowsDisks(new WindowsVolumes() {
        @Override
        public List<Volume> all() {
            return List.of(
                    new Volume("C:", 0, false),
                    new Volume("D:", 0, false),
                    new Volume("E:", 2, true),
                    new Volume("F:", 2, true));
        }

        @Override
        public String systemLetter() {
            return "C:";
        }

        @Override
        public long bytes(int disk) {
            return disk == 2 ? 31914983424L : 500107862016L;
        }

        @Override
        public boolean isReadOnly(int disk) {
            return false;
        }

        @Override
        public Closeable lock(String letter) throws IOException {
            if (letter.equals(busy)) {
                throw new IOException("volume " + letter + " is in use by a program");
            }
            events.add("lock " + letter);
            return () -> events.add("unlock " + letter);
        }

        @Override
        public boolean eject(String letter) {
            events.add("eject " + letter);
            return true;
        }
    });

    @Test
    void aCardAndTheSystemsDisk() {
        assertThat(disks.facts(CARD)).contains(new DiskFacts(31914983424L, 512, 512, true, false, "unknown"));
        assertThat(disks.runningSystemOn(CARD)).isEmpty();
        assertThat(disks.facts(SYSTEM).orElseThrow().removable()).isFalse();
        assertThat(disks.runningSystemOn(SYSTEM)).contains("Windows runs from C:");
        assertThat(disks.facts(Path.of("card.img"))).isEmpty();
    }

    @Test
    void everyVolumeOfTheCardIsLockedForTheTimeOfAChange() throws Exception {
        disks.hold(CARD).close();

        assertThat(events).containsExactly("lock E:", "lock F:", "unlock E:", "unlock F:");
    }

    @Test
    void aVolumeThatCannotBeLockedIsRefusedAndTheOthersAreLetGo() {
        busy = "F:";

        assertThatThrownBy(() -> disks.hold(CARD))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("in use: volume F: is in use by a program");
        assertThat(events).containsExactly("lock E:", "unlock E:");
    }

    @Test
    void ejects() {
        assertThat(disks.eject(CARD).ejected()).isTrue();
        assertThat(disks.eject(Path.of("\\\\.\\PHYSICALDRIVE7")).ejected()).isFalse();
    }
}
