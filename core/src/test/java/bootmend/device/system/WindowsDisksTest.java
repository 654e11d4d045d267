package bootmend.device.system;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.ReportedIOException;
import java.io.Closeable;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Answers as the pages of the calls describe them, never taken from a running system (value from memory). */
class WindowsDisksTest {

    private static final String CARD = "\\\\.\\PHYSICALDRIVE2";
    private static final String SYSTEM = "\\\\.\\PhysicalDrive0";
    private static final String HIDDEN = "\\\\?\\Volume{00000000-0000-0000-0000-000000000003}";

    private final List<String> events = new ArrayList<>();
    private String busy = "";

    private final WindowsDisks disks = new WindowsDisks(() -> new WindowsCalls() {
        @Override
        public List<Volume> volumes() {
            return List.of(
                    new Volume("\\\\?\\Volume{c}", List.of("C:\\"), List.of(0)),
                    new Volume("\\\\?\\Volume{d}", List.of("D:\\", "C:\\mounted\\"), List.of(0, 1)),
                    new Volume("\\\\?\\Volume{e}", List.of("E:\\"), List.of(2)),
                    new Volume(HIDDEN, List.of(), List.of(2)));
        }

        @Override
        public String systemLetter() {
            return "C:";
        }

        @Override
        public Optional<WindowsAnswers.Drive> drive(String device) {
            return switch (device) {
                case CARD -> Optional.of(drive(31914983424L, 512, true));
                case SYSTEM -> Optional.of(drive(500107862016L, 4096, false));
                default -> Optional.empty();
            };
        }

        private static WindowsAnswers.Drive drive(long bytes, int physical, boolean removable) {
            return new WindowsAnswers.Drive(bytes, 512, physical, removable, false, "usb", Optional.of("000000001206"));
        }

        @Override
        public List<Integer> disksOf(String device) {
            return device.equals("\\\\.\\E:") ? List.of(2) : List.of();
        }

        @Override
        public RawFile open(String device, boolean change) throws IOException {
            throw new IOException("not asked");
        }

        @Override
        public Closeable lock(String volume) throws IOException {
            if (volume.equals(busy)) {
                throw new IOException(volume + " is in use by a program");
            }
            events.add("lock " + volume);
            return () -> events.add("unlock " + volume);
        }

        @Override
        public boolean eject(String device) {
            events.add("eject " + device);
            return device.equals(CARD);
        }
    });

    @Test
    void aCardAndTheSystemsDisk() {
        assertThat(disks.facts(CARD)).contains(new DiskFacts(31914983424L, 512, 512, true, false, "usb"));
        assertThat(disks.runningSystemOn(CARD)).isEmpty();
        assertThat(disks.facts(SYSTEM)).contains(new DiskFacts(500107862016L, 512, 4096, false, false, "usb"));
        assertThat(disks.runningSystemOn(SYSTEM)).contains("Windows runs from C:");
        assertThat(disks.facts("\\\\.\\PHYSICALDRIVE7")).isEmpty();
        assertThat(disks.medium(CARD).reader()).contains("000000001206");
    }

    /** A folder on the system's drive where a volume is mounted is not the system's drive. */
    @Test
    void aVolumeThatIsMountedBelowTheSystemIsNotTheSystem() {
        assertThat(disks.runningSystemOn("\\\\.\\PHYSICALDRIVE1")).isEmpty();
    }

    @Test
    void everyVolumeOfTheCardIsLockedSeenOrNot() throws Exception {
        disks.hold(CARD).close();

        assertThat(events)
                .containsExactly(
                        "lock \\\\?\\Volume{e}", "lock " + HIDDEN, "unlock \\\\?\\Volume{e}", "unlock " + HIDDEN);
    }

    @Test
    void aVolumeThatIsNamedStandsForItsDisk() throws Exception {
        disks.hold("\\\\.\\E:").close();

        assertThat(events).contains("lock " + HIDDEN);
    }

    @Test
    void aVolumeThatCannotBeLockedIsRefusedAndTheOthersAreLetGo() {
        busy = HIDDEN;

        assertThatThrownBy(() -> disks.hold(CARD))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("in use: " + HIDDEN + " is in use by a program");
        assertThat(events).containsExactly("lock \\\\?\\Volume{e}", "unlock \\\\?\\Volume{e}");
    }

    @Test
    void ejectsTheWholeDiskWithItsVolumesLocked() {
        assertThat(disks.eject(CARD).ejected()).isTrue();
        assertThat(events).containsSubsequence("lock " + HIDDEN, "eject " + CARD, "unlock " + HIDDEN);
        assertThat(disks.eject("\\\\.\\PHYSICALDRIVE7").ejected()).isFalse();
    }

    /** Better refused than the system's own disk changed. */
    @Test
    void whereTheSystemDoesNotAnswerNothingIsTakenForACard() throws CardException {
        WindowsDisks silent = new WindowsDisks(() -> {
            throw new ReportedIOException(HelperLibrary.missing(new UnsatisfiedLinkError("no such file")));
        });

        assertThat(silent.runningSystemOn(CARD).orElseThrow()).contains("helper library");
        assertThat(silent.facts(CARD)).isEmpty();
        assertThatThrownBy(() -> silent.open(CARD, false)).hasMessageContaining("helper library");
        assertThatThrownBy(() -> new ChangeRules(silent, FixedDisks.ALLOWED).checkDevice(CARD))
                .isInstanceOf(CardException.class);
    }

    @Test
    void aDeviceKeepsItsName() {
        assertThat(disks.deviceOf(CARD).text()).isEqualTo(CARD);
    }
}
