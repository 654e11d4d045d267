package bootmend.device.system;

import bootmend.CardException;
import bootmend.ReportedIOException;
import bootmend.device.CardName;
import bootmend.device.Medium;
import com.sun.jna.LastErrorException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * macOS's disks, through its own {@code diskutil}; never run against a real system, only against recorded answers.
 *
 * <p>Every disk has two nodes: a buffered one ({@code /dev/disk4}), from which a read-back could come out of the system's
 * memory, and a raw one ({@code /dev/rdisk4}), which takes whole sectors only. Disks are listed and opened by the raw one.
 *
 * <p>Source: the page diskutil(8), verbs {@code info -plist}, {@code list -plist}, {@code unmountDisk} and {@code eject}; that
 * of hdiutil(1) on the two nodes; the answer's keys are values from memory.
 */
final class MacDisks implements SystemDisks {

    private static final String TOOL = "diskutil";

    private final Programs programs;

    MacDisks(Programs programs) {
        this.programs = programs;
    }

    @Override
    public Optional<DiskFacts> facts(String device) {
        return info(node(device)).map(info -> {
            int sector = (int) Math.max(DiskFacts.DEFAULT_SECTOR, Math.min(info.number("DeviceBlockSize"), 1 << 16));
            return new DiskFacts(
                    Math.max(info.number("TotalSize"), info.number("Size")),
                    sector,
                    sector,
                    isCard(info),
                    info.flag("WritableMedia").filter(writable -> !writable).isPresent(),
                    bus(info));
        });
    }

    /**
     * A medium that comes out of its drive, or a disk image that somebody attached. What can be ejected or is external only
     * is any disk on a cable.
     */
    private static boolean isCard(PropertyList info) {
        return info.isTrue("RemovableMedia") || bus(info).equals("disk-image");
    }

    private static String bus(PropertyList info) {
        String protocol = info.text("BusProtocol").orElse(DiskFacts.UNKNOWN_BUS).toLowerCase(Locale.ROOT);
        return protocol.equals("secure digital") ? "sd" : protocol.replace(' ', '-');
    }

    private Optional<PropertyList> info(String what) {
        return asked(List.of(TOOL, "info", "-plist", what));
    }

    private Optional<PropertyList> asked(List<String> command) {
        try {
            Programs.Result result = programs.run(command);
            return result.code() == 0 ? Optional.of(PropertyList.parse(result.output())) : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** The buffered node's name: {@code disk4} for {@code /dev/disk4} and {@code /dev/rdisk4}. */
    private static String node(String device) {
        String name = device.substring(device.lastIndexOf('/') + 1);
        return name.startsWith("rdisk") ? name.substring(1) : name;
    }

    /**
     * The system's volume stands on a synthesised disk, which says on which parts of which real disks it is stored; both
     * are the running system's.
     */
    @Override
    public Optional<String> runningSystemOn(String device) {
        Set<String> mine = info(node(device)).map(MacDisks::disksUnder).orElse(Set.of(wholeOf(node(device))));
        return info("/").map(MacDisks::disksUnder).orElse(Set.of()).stream()
                .filter(mine::contains)
                .map(disk -> "/dev/" + disk + " holds what is mounted at /")
                .findFirst();
    }

    private static Set<String> disksUnder(PropertyList info) {
        Set<String> disks = new LinkedHashSet<>();
        info.text("ParentWholeDisk").ifPresent(disks::add);
        for (PropertyList store : info.all("APFSPhysicalStores")) {
            store.text("APFSPhysicalStore").map(MacDisks::wholeOf).ifPresent(disks::add);
        }
        return disks;
    }

    /** {@code disk0} for {@code disk0s2}. */
    private static String wholeOf(String part) {
        return part.replaceAll("^(disk\\d+).*$", "$1");
    }

    private String wholeDisk(String device) {
        return info(node(device)).flatMap(info -> info.text("ParentWholeDisk")).orElseGet(() -> wholeOf(node(device)));
    }

    /** What is mounted is unmounted through the system when the disk is taken. */
    @Override
    public Optional<String> useOf(String device) {
        return Optional.empty();
    }

    /** An image that is attached is not told; its own lock is all there is. */
    @Override
    public Optional<String> useOfImage(Path image) {
        return Optional.empty();
    }

    /** No card number and no count of media is told; only where in the machine the reader is. */
    @Override
    public Medium medium(String device) {
        return new Medium(
                "/dev/" + node(device),
                Optional.empty(),
                Optional.empty(),
                info(node(device)).flatMap(info -> info.text("DeviceTreePath")));
    }

    @Override
    public RawFile open(String device, boolean change) throws IOException {
        return open(PosixDisk.load(), device, change);
    }

    RawFile open(PosixDisk.CLibrary library, String device, boolean change) throws IOException {
        try {
            return PosixDisk.open(library, new MacControl(), "/dev/r" + node(device), change);
        } catch (LastErrorException e) {
            throw new ReportedIOException(notOpened(e, change));
        }
    }

    /** The system's protection of removable volumes answers EPERM, file permissions EACCES. Value from memory. */
    private static CardException notOpened(LastErrorException e, boolean change) {
        return switch (e.getErrorCode()) {
            case MacControl.EPERM ->
                CardException.refused(
                        "the system's privacy protection keeps this program from the card",
                        "Allow your terminal access to removable volumes or to the full disk in the system's privacy "
                                + "settings, or name the folder where the card's boot partition is mounted.",
                        e);
            case MacControl.EACCES ->
                CardException.refused(
                        "you have no right to " + (change ? "write to" : "read") + " it",
                        "Run this as an administrator, or name the folder where the card's boot partition is mounted, "
                                + "which needs no such right.",
                        e);
            case MacControl.EBUSY ->
                CardException.refused("it is in use", "Unmount the card, leave it in its reader, then try again.", e);
            case MacControl.EROFS -> ChangeRules.writeProtected(false);
            default ->
                CardException.unreadable(
                        "it could not be opened (" + e.getMessage() + ")",
                        "Check that the card sits firmly in its reader, then try again.",
                        e);
        };
    }

    @Override
    public DiskHold hold(String device) throws CardException {
        try {
            Programs.Result result = programs.run(List.of(TOOL, "unmountDisk", wholeDisk(device)));
            if (result.code() != 0) {
                throw CardException.refused(
                        "it is in use: " + result.said(), "Close what uses the card, then try again.");
            }
        } catch (CardException e) {
            throw e;
        } catch (IOException e) {
            throw CardException.refused(
                    "the system would not unmount it (" + e.getMessage() + ")",
                    "Unmount the card yourself, leave it in its reader, then try again.",
                    e);
        }
        return DiskHold.NONE;
    }

    @Override
    public Ejection eject(String device) {
        try {
            Programs.Result result = programs.run(List.of(TOOL, "eject", wholeDisk(device)));
            return result.code() == 0
                    ? Ejection.done("Ejected: take the card out.")
                    : Ejection.notDone(
                            "It was not ejected (" + result.said() + "); all that was written is on the card.");
        } catch (IOException e) {
            return Ejection.notDone(
                    "It was not ejected (" + e.getMessage() + "); all that was written is on the card.");
        }
    }

    @Override
    public CardName deviceOf(String listed) {
        return new CardName.FileName(Path.of("/dev/r" + node(listed)));
    }

    /** Every disk where the general list is empty because its own helper is missing. */
    @Override
    public List<AttachedDisk> unlisted(List<CardName> listed) {
        List<AttachedDisk> disks = new ArrayList<>();
        List<PropertyList> all = listed.isEmpty()
                ? asked(List.of(TOOL, "list", "-plist"))
                        .map(list -> list.all("AllDisksAndPartitions"))
                        .orElse(List.of())
                : List.of();
        for (PropertyList disk : all) {
            String name = disk.text("DeviceIdentifier").orElse("");
            Optional<DiskFacts> facts = name.isEmpty() ? Optional.empty() : facts(name);
            if (facts.isPresent() && facts.get().bytes() > 0) {
                disks.add(attached(name, facts.get(), disk.all("Partitions")));
            }
        }
        return disks;
    }

    private AttachedDisk attached(String name, DiskFacts facts, List<PropertyList> parts) {
        return new AttachedDisk(
                deviceOf(name),
                facts.bytes(),
                info(name).flatMap(info -> info.text("MediaName")).orElse(""),
                facts.bus(),
                facts.removable(),
                facts.readOnly(),
                runningSystemOn(name),
                parts.stream()
                        .filter(part -> part.text("DeviceIdentifier").isPresent())
                        .map(part -> new AttachedPartition(
                                deviceOf(part.text("DeviceIdentifier").orElseThrow()),
                                part.number("Size"),
                                part.text("VolumeName")
                                        .or(() -> part.text("Content"))
                                        .orElse(""),
                                part.text("MountPoint").map(List::of).orElse(List.of())))
                        .toList(),
                List.of());
    }
}
