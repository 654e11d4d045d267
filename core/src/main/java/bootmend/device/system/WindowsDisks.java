package bootmend.device.system;

import bootmend.CardException;
import bootmend.ReportedIOException;
import bootmend.device.CardName;
import bootmend.device.Medium;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Windows's disks, named {@code \\.\PHYSICALDRIVEn}, and volumes, named {@code \\.\E:} or by their own long name; never run
 * against a real system, only against recorded answers.
 */
final class WindowsDisks implements SystemDisks {

    private static final String PREFIX = "\\\\.\\PHYSICALDRIVE";

    /** Opens the way to the system when it is first needed. */
    @FunctionalInterface
    interface Calls {
        WindowsCalls get() throws IOException;
    }

    private final Calls calls;

    WindowsDisks(Calls calls) {
        this.calls = calls;
    }

    /** The numbers of the disks that {@code device} is, or lies on. */
    private List<Integer> numbers(String device) throws IOException {
        String name = device.toUpperCase(Locale.ROOT);
        String digits = name.startsWith(PREFIX) ? name.substring(PREFIX.length()) : "";
        if (digits.matches("\\d{1,4}")) {
            return List.of(Integer.parseInt(digits));
        }
        return calls.get().disksOf(device);
    }

    /** Every volume that has a part on one of the disks that {@code device} is or lies on, seen by the user or not. */
    private List<WindowsCalls.Volume> volumesOn(String device) throws IOException {
        List<Integer> numbers = numbers(device);
        return numbers.isEmpty()
                ? List.of()
                : calls.get().volumes().stream()
                        .filter(volume -> volume.disks().stream().anyMatch(numbers::contains))
                        .toList();
    }

    @Override
    public Optional<DiskFacts> facts(String device) {
        try {
            return calls.get()
                    .drive(device)
                    .map(drive -> new DiskFacts(
                            drive.bytes(),
                            drive.logicalSector(),
                            drive.physicalSector(),
                            drive.removable(),
                            drive.readOnly(),
                            drive.bus()));
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** Where the volumes are not told, every disk counts as the running system's: better refused than wrong. */
    @Override
    public Optional<String> runningSystemOn(String device) {
        try {
            String letter = calls.get().systemLetter();
            return volumesOn(device).stream()
                    .flatMap(volume -> volume.mountedAt().stream())
                    .filter(place -> place.toUpperCase(Locale.ROOT).startsWith(letter.toUpperCase(Locale.ROOT))
                            && place.length() <= letter.length() + 1)
                    .map(place -> "Windows runs from " + letter)
                    .findFirst();
        } catch (IOException e) {
            return Optional.of("whether Windows runs from it is not told: " + e.getMessage());
        }
    }

    /** What is in use shows when its volumes are locked. */
    @Override
    public Optional<String> useOf(String device) {
        return Optional.empty();
    }

    /** An image that is attached is opened by the system itself, which lets nobody else write to it. */
    @Override
    public Optional<String> useOfImage(Path image) {
        return Optional.empty();
    }

    /** The reader's serial number; neither a card's own nor a count of media is told. */
    @Override
    public Medium medium(String device) {
        Optional<String> serial;
        try {
            serial = calls.get().drive(device).flatMap(WindowsAnswers.Drive::serial);
        } catch (IOException e) {
            serial = Optional.empty();
        }
        return new Medium(device, Optional.empty(), Optional.empty(), serial);
    }

    @Override
    public RawFile open(String device, boolean change) throws IOException {
        return calls.get().open(device, change);
    }

    @Override
    public DiskHold hold(String device) throws CardException {
        List<Closeable> locks = new ArrayList<>();
        try {
            for (WindowsCalls.Volume volume : volumesOn(device)) {
                locks.add(calls.get().lock(volume.device()));
            }
            return new Hold(locks);
        } catch (IOException e) {
            try {
                new Hold(locks).close();
            } catch (IOException other) {
                e.addSuppressed(other);
            }
            if (e instanceof ReportedIOException refused) {
                throw refused.report();
            }
            throw CardException.refused(
                    "it is in use: " + e.getMessage(),
                    "Close the programs and windows that show the card, run this as an administrator, then try again.",
                    e);
        }
    }

    private record Hold(List<Closeable> locks) implements DiskHold {

        /** Raw reads of a dismounted disk do not go through a volume's cache. */
        @Override
        public void dropCache() {
            // Nothing is kept.
        }

        /** All are closed; the first that fails is told. */
        @Override
        public void close() throws IOException {
            IOException first = null;
            for (Closeable lock : locks) {
                try {
                    lock.close();
                } catch (IOException e) {
                    first = first == null ? e : first;
                }
            }
            locks.clear();
            if (first != null) {
                throw first;
            }
        }
    }

    @Override
    public Ejection eject(String device) {
        try (DiskHold held = hold(device)) {
            if (calls.get().eject(device)) {
                return Ejection.done("Ejected: take the card out.");
            }
        } catch (CardException | IOException e) {
            return notEjected(" (" + e.getMessage() + ")");
        }
        return notEjected("");
    }

    private static Ejection notEjected(String why) {
        return Ejection.notDone("It was not ejected" + why
                + "; all that was written is on the card. Use \"Eject\" in the system's own window.");
    }

    @Override
    public CardName deviceOf(String listed) {
        return new CardName.DeviceName(listed);
    }

    @Override
    public List<AttachedDisk> unlisted(List<CardName> listed) {
        return List.of();
    }
}
