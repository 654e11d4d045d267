package bootmend.device.system;

import bootmend.CardException;
import bootmend.device.CardIdentity;
import bootmend.device.CardName;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Linux's disks, through its {@code /proc} and {@code /sys} trees; where these are absent every answer is "nothing
 * known".
 *
 * <p>Sources: the kernel's proc(5) page, section on mountinfo, and its sysfs-block ABI page.
 */
final class LinuxDisks implements SystemDisks {

    private static final int MAX_SECTOR = 65536;
    /** The unit of {@code size} under /sys, whatever the disk's sectors. Source: sysfs-block ABI page, "size". */
    private static final int SIZE_UNIT = 512;
    /** How many layers of combined or encrypted disks are followed. No source: a bound. */
    private static final int MOST_LAYERS = 8;

    private final Path proc;
    private final Path sys;
    private final LinuxMounts mounts;

    LinuxDisks() {
        this(Path.of("/proc"), Path.of("/sys"));
    }

    /** For tests: the roots of two trees laid out as Linux lays them. */
    LinuxDisks(Path proc, Path sys) {
        this.proc = proc;
        this.sys = sys;
        this.mounts = new LinuxMounts(proc, sys);
    }

    @Override
    public Optional<DiskFacts> facts(String device) {
        String name = LinuxMounts.realName(Path.of(device));
        Path part = folder(name);
        if (name.isEmpty() || !Files.isDirectory(part)) {
            return Optional.empty();
        }
        Path disk = folder(diskOf(name));
        int logical = sector(disk, "logical_block_size");
        return Optional.of(new DiskFacts(
                number(part.resolve("size")) * SIZE_UNIT,
                logical,
                Math.max(logical, sector(disk, "physical_block_size")),
                isRemovable(disk),
                number(part.resolve("ro")) == 1 || number(disk.resolve("ro")) == 1,
                bus(disk)));
    }

    private static int sector(Path disk, String kind) {
        long size = number(disk.resolve("queue").resolve(kind));
        boolean plausible = size >= DiskFacts.DEFAULT_SECTOR && size <= MAX_SECTOR && Long.bitCount(size) == 1;
        return plausible ? (int) size : DiskFacts.DEFAULT_SECTOR;
    }

    /**
     * A card slot's driver calls no disk removable, so what sits in it decides: {@code SD} is a card, {@code MMC} is
     * soldered on. A loop device counts as removable where an image file is behind it, which is what the user attached
     * and can detach; over another device, that one is to be named itself.
     */
    private static boolean isRemovable(Path disk) {
        if (isLoop(disk)) {
            return !text(disk.resolve("loop/backing_file")).startsWith("/dev/");
        }
        return number(disk.resolve("removable")) == 1
                || text(disk.resolve("device/type")).equals("SD");
    }

    private static boolean isLoop(Path disk) {
        return disk.getFileName().toString().startsWith("loop");
    }

    /** By the disk's place in the device tree. Common practice, no source. */
    private static String bus(Path disk) {
        String name = disk.getFileName().toString();
        String type = text(disk.resolve("device/type"));
        String place = disk.toString();
        if (isLoop(disk)) {
            return DiskFacts.LOOP;
        }
        if (name.startsWith("mmcblk")) {
            return type.equals("MMC") ? "mmc" : "sd";
        }
        for (String bus : List.of("usb", "nvme", "virtio", "ata")) {
            if (place.contains("/" + bus)) {
                return bus;
            }
        }
        return DiskFacts.UNKNOWN_BUS;
    }

    @Override
    public Optional<String> runningSystemOn(String device) {
        Set<String> mine = base(LinuxMounts.realName(Path.of(device)), MOST_LAYERS);
        for (LinuxMounts.Mount mount : mounts.all()) {
            if (mount.isSystem()
                    && mount.names().stream()
                            .flatMap(name -> base(name, MOST_LAYERS).stream())
                            .anyMatch(mine::contains)) {
                return Optional.of(mount.source() + " is mounted at " + mount.point());
            }
        }
        return Optional.empty();
    }

    /** The whole disks that are under a device, through what combines or encrypts them. */
    private Set<String> base(String name, int layers) {
        Set<String> disks = new LinkedHashSet<>();
        List<String> below = layers == 0 ? List.of() : names(folder(name).resolve("slaves"));
        below.forEach(each -> disks.addAll(base(each, layers - 1)));
        if (below.isEmpty()) {
            disks.add(diskOf(name));
        }
        return disks;
    }

    @Override
    public Optional<String> useOf(String device) {
        List<String> parts = withPartitions(LinuxMounts.realName(Path.of(device)));
        return mountOf(parts).or(() -> swapOf(parts)).or(() -> holderOf(parts));
    }

    @Override
    public Optional<String> useOfImage(Path image) {
        return loopsOver(image).stream()
                .map(name -> mountOf(withPartitions(name)).orElse("attached to this computer as /dev/" + name))
                .findFirst();
    }

    private List<String> withPartitions(String name) {
        List<String> parts = new ArrayList<>(List.of(name));
        parts.addAll(partitions(name));
        return parts;
    }

    /**
     * The kernel's number of the disk and its count of media, an SD card's CID, and the serial number of a USB reader.
     *
     * <p>Sources: the kernel's sysfs-block ABI page, "diskseq"; its page on MMC and SD device attributes, "cid"; sysfs-bus-usb.
     */
    @Override
    public CardIdentity medium(String device) {
        String name = LinuxMounts.realName(Path.of(device));
        Path part = folder(name);
        Path disk = folder(diskOf(name));
        String number = text(part.resolve("dev"));
        String sequence = text(disk.resolve("diskseq"));
        return new CardIdentity(
                "/dev/" + name,
                number.isEmpty()
                        ? Optional.empty()
                        : Optional.of("disk " + number + (sequence.isEmpty() ? "" : " medium " + sequence)),
                Optional.of(text(disk.resolve("device/cid"))).filter(cid -> cid.matches("[0-9a-f]{32}")),
                reader(disk));
    }

    /** A USB reader's own serial number, with which of its slots; a slot that is built in by its controller's name. */
    private static Optional<String> reader(Path disk) {
        Path device;
        try {
            device = disk.resolve("device").toRealPath();
        } catch (IOException e) {
            return Optional.empty();
        }
        String slot = device.getFileName().toString();
        if (slot.matches("mmc\\d+:[0-9a-f]+")) {
            return Optional.of(slot.substring(0, slot.indexOf(':')));
        }
        Path up = device;
        for (int i = 0; i < MOST_LAYERS && up != null; i++, up = up.getParent()) {
            String serial = text(up.resolve("serial"));
            if (Files.exists(up.resolve("idVendor")) && !serial.isEmpty()) {
                return Optional.of(serial + " slot " + slot.substring(slot.lastIndexOf(':') + 1));
            }
        }
        return Optional.empty();
    }

    private List<String> loopsOver(Path image) {
        try {
            String wanted = image.toRealPath().toString();
            return names(sys.resolve("class/block")).stream()
                    .filter(name -> name.startsWith("loop"))
                    .filter(name ->
                            text(folder(name).resolve("loop/backing_file")).equals(wanted))
                    .toList();
        } catch (IOException e) {
            return List.of();
        }
    }

    private Optional<String> mountOf(List<String> names) {
        return mounts.all().stream()
                .filter(mount -> mount.names().stream().anyMatch(names::contains))
                .map(mount -> mount.source() + " is mounted at " + mount.point())
                .findFirst();
    }

    private Optional<String> swapOf(List<String> names) {
        return LinuxMounts.lines(proc.resolve("swaps")).stream()
                .map(line -> line.split("\\s+", 2)[0])
                .filter(source -> source.startsWith("/dev/") && names.contains(LinuxMounts.realName(Path.of(source))))
                .map(source -> source + " is used as swap space")
                .findFirst();
    }

    /** Encrypted and combined disks are mounted under other names, but hold the disks below them. */
    private Optional<String> holderOf(List<String> names) {
        return names.stream()
                .flatMap(name -> names(folder(name).resolve("holders")).stream()
                        .map(holder -> "/dev/" + name + " is held by " + holder))
                .findFirst();
    }

    @Override
    public DiskHold hold(String device) throws CardException {
        return LinuxHold.of(device);
    }

    @Override
    public Ejection eject(String device) {
        String disk = "/dev/" + diskOf(LinuxMounts.realName(Path.of(device)));
        if (facts(device).filter(DiskFacts::isLoop).isPresent()) {
            return Ejection.notDone("A loop device is not ejected; detach " + disk + " instead.");
        }
        return new LinuxEjection(Programs.ofThisComputer()).eject(disk);
    }

    @Override
    public CardName deviceOf(String listed) {
        return new CardName.FileName(Path.of(listed));
    }

    /** Loop devices, and every disk where the general list is empty because its own helper is missing. */
    @Override
    public List<AttachedDisk> unlisted(List<CardName> listed) {
        List<AttachedDisk> disks = new ArrayList<>();
        for (String name : names(sys.resolve("class/block"))) {
            CardName device = deviceOf("/dev/" + name);
            boolean whole = diskOf(name).equals(name)
                    && !name.startsWith("ram")
                    && !name.startsWith("zram")
                    && names(folder(name).resolve("slaves")).isEmpty();
            Optional<DiskFacts> facts = whole && !listed.contains(device) ? facts(device.text()) : Optional.empty();
            if (facts.isPresent() && facts.get().bytes() > 0) {
                disks.add(disk(name, facts.get()));
            }
        }
        return disks;
    }

    private AttachedDisk disk(String name, DiskFacts facts) {
        String model = facts.isLoop()
                ? text(folder(name).resolve("loop/backing_file"))
                : text(folder(name).resolve("device/model"));
        List<AttachedPartition> partitions = new ArrayList<>();
        for (String part : partitions(name)) {
            partitions.add(new AttachedPartition(
                    deviceOf("/dev/" + part), number(folder(part).resolve("size")) * SIZE_UNIT, "", mountPoints(part)));
        }
        return new AttachedDisk(
                deviceOf("/dev/" + name),
                facts.bytes(),
                model,
                facts.bus(),
                facts.removable(),
                facts.readOnly(),
                runningSystemOn("/dev/" + name),
                partitions,
                mountPoints(name));
    }

    private List<String> mountPoints(String name) {
        return mounts.all().stream()
                .filter(mount -> mount.names().contains(name))
                .map(LinuxMounts.Mount::point)
                .toList();
    }

    private Path folder(String name) {
        Path link = sys.resolve("class/block").resolve(name.isEmpty() ? "." : name);
        try {
            return link.toRealPath();
        } catch (IOException e) {
            return link;
        }
    }

    /** A partition's own folder stands in its disk's. */
    private String diskOf(String name) {
        Path folder = folder(name);
        return Files.exists(folder.resolve("partition"))
                ? folder.getParent().getFileName().toString()
                : name;
    }

    private List<String> partitions(String disk) {
        Path folder = folder(disk);
        return names(folder).stream()
                .filter(name -> Files.exists(folder.resolve(name).resolve("partition")))
                .toList();
    }

    private static List<String> names(Path folder) {
        List<String> found = new ArrayList<>();
        try (DirectoryStream<Path> entries = Files.newDirectoryStream(folder)) {
            entries.forEach(entry -> found.add(entry.getFileName().toString()));
        } catch (IOException e) {
            return found;
        }
        found.sort(null);
        return found;
    }

    private static String text(Path file) {
        List<String> lines = LinuxMounts.lines(file);
        return lines.isEmpty() ? "" : lines.get(0).strip();
    }

    private static long number(Path file) {
        String text = text(file);
        return text.matches("\\d{1,15}") ? Long.parseLong(text) : 0;
    }
}
