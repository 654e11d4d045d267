package bootmend.device;

import bootmend.CardException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * macOS's disks, through its own {@code diskutil}; never run against a real system, only against recorded answers.
 *
 * <p>Source: the page diskutil(8), verbs {@code info -plist}, {@code unmountDisk} and {@code eject}; the answer's keys are
 * values from memory.
 */
final class MacDisks implements SystemDisks {

    private static final String TOOL = "diskutil";

    private final Programs programs;

    MacDisks(Programs programs) {
        this.programs = programs;
    }

    @Override
    public Optional<DiskFacts> facts(Path device) {
        return info(device).map(info -> {
            int sector = (int) Math.max(DiskFacts.DEFAULT_SECTOR, Math.min(info.number("DeviceBlockSize"), 1 << 16));
            long bytes = Math.max(info.number("TotalSize"), info.number("Size"));
            boolean removable = !info.isTrue("Internal")
                            && (info.isTrue("RemovableMedia") || info.isTrue("Removable") || info.isTrue("Ejectable"))
                    || info.isTrue("RemovableMedia");
            return new DiskFacts(
                    bytes,
                    sector,
                    sector,
                    removable,
                    info.text("WritableMedia").filter("false"::equals).isPresent(),
                    bus(info));
        });
    }

    private static String bus(PropertyList info) {
        String protocol = info.text("BusProtocol").orElse(DiskFacts.UNKNOWN_BUS).toLowerCase(Locale.ROOT);
        return protocol.equals("secure digital") ? "sd" : protocol.replace(' ', '-');
    }

    private Optional<PropertyList> info(Path device) {
        if (Files.isRegularFile(device)) {
            return Optional.empty();
        }
        return info(node(device));
    }

    private Optional<PropertyList> info(String what) {
        try {
            Programs.Result result = programs.run(List.of(TOOL, "info", "-plist", what));
            return result.code() == 0 ? Optional.of(PropertyList.parse(result.output())) : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** The buffered node's name: {@code disk4} for {@code /dev/disk4} and {@code /dev/rdisk4}. */
    private static String node(Path device) {
        String name = device.getFileName().toString();
        return name.startsWith("rdisk") ? name.substring(1) : name;
    }

    @Override
    public Optional<String> runningSystemOn(Path device) {
        Optional<String> system = info("/").flatMap(MacDisks::wholeDisk);
        return system.isPresent() && system.equals(info(device).flatMap(MacDisks::wholeDisk))
                ? Optional.of("/dev/" + system.get() + " is mounted at /")
                : Optional.empty();
    }

    private static Optional<String> wholeDisk(PropertyList info) {
        return info.text("ParentWholeDisk");
    }

    /** What is mounted is unmounted through the system when the disk is taken. */
    @Override
    public Optional<String> useOf(Path card) {
        return Optional.empty();
    }

    @Override
    public DiskHold hold(Path device) throws CardException {
        String disk = info(device).flatMap(MacDisks::wholeDisk).orElse(node(device));
        try {
            Programs.Result result = programs.run(List.of(TOOL, "unmountDisk", disk));
            if (result.code() != 0) {
                throw CardException.refused(
                        "it is in use: " + result.output().strip(), "Close what uses the card, then try again.");
            }
        } catch (IOException e) {
            throw CardException.refused(
                    "the system would not unmount it (" + e.getMessage() + ")",
                    "Unmount the card yourself, leave it in its reader, then try again.",
                    e);
        }
        return DiskHold.NONE;
    }

    @Override
    public Ejection eject(Path device) {
        String disk = info(device).flatMap(MacDisks::wholeDisk).orElse(node(device));
        try {
            Programs.Result result = programs.run(List.of(TOOL, "eject", disk));
            return result.code() == 0
                    ? Ejection.done("Ejected: take the card out.")
                    : Ejection.notDone("It was not ejected (" + result.output().strip()
                            + "); all that was written is on " + "the card.");
        } catch (IOException e) {
            return Ejection.notDone(
                    "It was not ejected (" + e.getMessage() + "); all that was written is on the card.");
        }
    }

    @Override
    public Path deviceOf(String listed) {
        return listed.startsWith("/") ? Path.of(listed) : Path.of("/dev", listed);
    }

    @Override
    public List<AttachedDisk> unlisted(List<Path> listed) {
        return List.of();
    }
}
