package bootmend.device.system;

import bootmend.CardException;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;

/** Windows's disks, named {@code \\.\PHYSICALDRIVEn}; never run against a real system, only against recorded answers. */
final class WindowsDisks implements SystemDisks {

    static final String PREFIX = "\\\\.\\PHYSICALDRIVE";

    private final WindowsVolumes volumes;

    WindowsDisks(WindowsVolumes volumes) {
        this.volumes = volumes;
    }

    private static OptionalInt number(Path device) {
        String name = device.toString().toUpperCase(Locale.ROOT).replaceAll("\\\\+$", "");
        String digits = name.startsWith(PREFIX) ? name.substring(PREFIX.length()) : "";
        return digits.matches("\\d{1,4}") ? OptionalInt.of(Integer.parseInt(digits)) : OptionalInt.empty();
    }

    private List<WindowsVolumes.Volume> on(Path device) {
        OptionalInt number = number(device);
        return number.isEmpty()
                ? List.of()
                : volumes.all().stream()
                        .filter(volume -> volume.disk() == number.getAsInt())
                        .toList();
    }

    /** Windows calls volumes removable, not disks; one without a letter is not known to be. */
    @Override
    public Optional<DiskFacts> facts(Path device) {
        OptionalInt number = number(device);
        if (number.isEmpty()) {
            return Optional.empty();
        }
        boolean removable = on(device).stream().anyMatch(WindowsVolumes.Volume::removable);
        return Optional.of(new DiskFacts(
                volumes.bytes(number.getAsInt()),
                DiskFacts.DEFAULT_SECTOR,
                DiskFacts.DEFAULT_SECTOR,
                removable,
                volumes.isReadOnly(number.getAsInt()),
                DiskFacts.UNKNOWN_BUS));
    }

    @Override
    public Optional<String> runningSystemOn(Path device) {
        return on(device).stream()
                .map(WindowsVolumes.Volume::letter)
                .filter(letter -> letter.equalsIgnoreCase(volumes.systemLetter()))
                .map(letter -> "Windows runs from " + letter)
                .findFirst();
    }

    /** What is in use shows when its volumes are locked. */
    @Override
    public Optional<String> useOf(Path card) {
        return Optional.empty();
    }

    @Override
    public DiskHold hold(Path device) throws CardException {
        List<Closeable> locks = new ArrayList<>();
        try {
            for (WindowsVolumes.Volume volume : on(device)) {
                locks.add(volumes.lock(volume.letter()));
            }
            return new Hold(locks);
        } catch (IOException e) {
            closeAll(locks);
            throw CardException.refused(
                    "it is in use: " + e.getMessage(),
                    "Close the programs and windows that show the card, run this as an administrator, then try again.",
                    e);
        }
    }

    private record Hold(List<Closeable> locks) implements DiskHold {

        /** Raw reads of a dismounted disk do not go through the volume's cache. */
        @Override
        public void dropCache() {
            // Nothing is kept.
        }

        @Override
        public void close() {
            closeAll(locks);
        }
    }

    private static void closeAll(List<Closeable> locks) {
        for (Closeable lock : locks) {
            try {
                lock.close();
            } catch (IOException e) {
                // Windows lets go of a lock when this process ends, at the latest.
            }
        }
    }

    @Override
    public Ejection eject(Path device) {
        return on(device).stream().anyMatch(volume -> volumes.eject(volume.letter()))
                ? Ejection.done("Ejected: take the card out.")
                : Ejection.notDone(
                        "It was not ejected; all that was written is on the card. Use \"Eject\" in the system's "
                                + "own window.");
    }

    @Override
    public Path deviceOf(String listed) {
        return Path.of(listed);
    }

    @Override
    public List<AttachedDisk> unlisted(List<Path> listed) {
        return List.of();
    }
}
