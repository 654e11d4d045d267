package bootmend.device.system;

import bootmend.device.FileKey;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;

/**
 * What the system tells of one medium that no other has at the same time, as a short text; empty where it tells nothing.
 *
 * <p>{@code file:} and a file's key for an image or folder, {@code cid:} and a card's own identification register, or
 * {@code seat:} and which medium sits in which place of which reader since this computer was started. A {@code seat:} key
 * changes when the medium is taken out, so two of them that differ say nothing.
 *
 * <p>Sources: the kernel's sysfs-block ABI page, "diskseq"; its driver documentation "SD and MMC Device Partitions and
 * Attributes", "cid".
 */
public final class MediumKey {

    /** How the key of a card by its own register begins. */
    public static final String CARD = "cid:";

    private static final int MOST_FOLDERS = 12;

    private final Path proc;
    private final Path sys;

    public MediumKey() {
        this(Path.of("/proc"), Path.of("/sys"));
    }

    /** For tests: the roots of two trees laid out as Linux lays them. */
    MediumKey(Path proc, Path sys) {
        this.proc = proc;
        this.sys = sys;
    }

    /**
     * Of a folder: where a file system is mounted there, its files have the same keys on every card, so the disk that it
     * lies on is asked.
     */
    public String ofFolder(Path folder) {
        try {
            Path parent = folder.toAbsolutePath().getParent();
            if (parent == null) {
                return "";
            }
            boolean mounted =
                    !Files.getFileStore(folder).equals(Files.getFileStore(parent)) || !isSameDevice(folder, parent);
            return mounted ? ofDisk(Path.of(Files.getFileStore(folder).name())) : FileKey.of(folder);
        } catch (IOException | RuntimeException e) {
            return "";
        }
    }

    /** A file's key starts with the number of the device it lies on where the system gives keys in that form. */
    private static boolean isSameDevice(Path a, Path b) throws IOException {
        return device(a).equals(device(b));
    }

    private static String device(Path path) throws IOException {
        Object key = Files.readAttributes(path, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS)
                .fileKey();
        String text = String.valueOf(key);
        int end = text.indexOf(',');
        return text.startsWith("(dev=") && end > 0 ? text.substring(0, end) : "";
    }

    /** Of a disk, or of the disk that a partition is a part of. */
    public String ofDisk(String device) {
        try {
            return ofDisk(Path.of(device));
        } catch (InvalidPathException e) {
            return "";
        }
    }

    /** The same for a device that is a file here. */
    public String ofDisk(Path device) {
        try {
            Path folder = sys.resolve("class/block")
                    .resolve(device.toRealPath().getFileName().toString())
                    .toRealPath();
            Path disk = Files.exists(folder.resolve("partition")) ? folder.getParent() : folder;
            String cid = text(disk.resolve("device/cid"));
            return cid.isEmpty() ? seat(disk) : CARD + cid;
        } catch (IOException e) {
            return "";
        }
    }

    private String seat(Path disk) {
        String sequence = text(disk.resolve("diskseq"));
        String start = text(proc.resolve("sys/kernel/random/boot_id"));
        if (sequence.isEmpty() || start.isEmpty()) {
            return "";
        }
        return "seat:" + reader(disk) + "/" + disk.getFileName() + "/" + start + "/" + sequence;
    }

    /** The serial number of what the disk hangs on; it only helps a person who reads the record. */
    private static String reader(Path disk) {
        Path folder = disk;
        for (int i = 0; i < MOST_FOLDERS && folder != null; i++) {
            String serial = text(folder.resolve("serial"));
            if (!serial.isEmpty()) {
                return serial;
            }
            folder = folder.getParent();
        }
        return "";
    }

    private static String text(Path file) {
        List<String> lines = LinuxMounts.lines(file);
        return lines.isEmpty() ? "" : lines.get(0).strip();
    }
}
