package bootmend.device;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the running system says about its disks: sector sizes, and who uses one.
 *
 * <p>Only Linux is asked, through its {@code /proc} and {@code /sys} trees; where these are absent every answer is
 * "nothing known". Sources: the kernel's proc(5) page, section on mountinfo, and its sysfs-block ABI page.
 */
final class SystemDisks {

    private static final int DEFAULT_SECTOR = 512;
    private static final int MAX_SECTOR = 65536;

    private final Path proc;
    private final Path sys;

    SystemDisks() {
        this(Path.of("/proc"), Path.of("/sys"));
    }

    /** For tests: the roots of two trees laid out as Linux lays them. */
    SystemDisks(Path proc, Path sys) {
        this.proc = proc;
        this.sys = sys;
    }

    /** Bytes per logical sector of the disk at {@code device}; 512 where the system does not say. */
    int logicalSectorSize(Path device) {
        for (String owner : List.of("", "..")) {
            Path value = blockFolder(device).resolve(owner).resolve("queue/logical_block_size");
            try {
                int size = Integer.parseInt(Files.readString(value).trim());
                if (size >= DEFAULT_SECTOR && size <= MAX_SECTOR && Integer.bitCount(size) == 1) {
                    return size;
                }
            } catch (IOException | NumberFormatException e) {
                // A partition has no queue of its own; its disk, one folder up, has.
            }
        }
        return DEFAULT_SECTOR;
    }

    /** Who uses the disk or image at {@code card} (or a part of it), as a clause for a sentence. */
    Optional<String> useOf(Path card) {
        List<String> parts = new ArrayList<>();
        boolean image = Files.isRegularFile(card);
        for (String name : image ? loopsOver(card) : List.of(realName(card))) {
            parts.add(name);
            parts.addAll(children(sys.resolve("class/block").resolve(name)));
            if (image) {
                Optional<String> mounted = mountOf(parts);
                return Optional.of(mounted.orElse("attached to this computer as /dev/" + name));
            }
        }
        return mountOf(parts).or(() -> swapOf(parts)).or(() -> holderOf(parts));
    }

    private Path blockFolder(Path device) {
        Path link = sys.resolve("class/block").resolve(realName(device));
        try {
            return link.toRealPath();
        } catch (IOException e) {
            return link;
        }
    }

    private static String realName(Path device) {
        try {
            return device.toRealPath().getFileName().toString();
        } catch (IOException e) {
            Path name = device.getFileName();
            return name == null ? "" : name.toString();
        }
    }

    private List<String> loopsOver(Path image) {
        List<String> loops = new ArrayList<>();
        try (DirectoryStream<Path> blocks = Files.newDirectoryStream(sys.resolve("class/block"), "loop*")) {
            String wanted = image.toRealPath().toString();
            for (Path block : blocks) {
                Path backing = block.resolve("loop/backing_file");
                if (Files.isReadable(backing) && Files.readString(backing).strip().equals(wanted)) {
                    loops.add(block.getFileName().toString());
                }
            }
        } catch (IOException e) {
            return loops;
        }
        return loops;
    }

    private static List<String> children(Path block) {
        List<String> found = new ArrayList<>();
        try (DirectoryStream<Path> parts = Files.newDirectoryStream(block, entry ->
                Files.exists(entry.resolve("partition")))) {
            parts.forEach(part -> found.add(part.getFileName().toString()));
        } catch (IOException e) {
            return found;
        }
        return found;
    }

    private Optional<String> mountOf(List<String> names) {
        for (String line : lines(proc.resolve("self/mountinfo"))) {
            // "36 35 98:0 /mnt1 /mnt2 rw,noatime master:1 - ext3 /dev/root rw": mount point, then source after " - ".
            int dash = line.indexOf(" - ");
            String[] head = line.split(" ");
            if (dash < 0 || head.length < 5) {
                continue;
            }
            String[] tail = line.substring(dash + 3).split(" ");
            if (tail.length >= 2 && tail[1].startsWith("/dev/") && names.contains(realName(Path.of(tail[1])))) {
                return Optional.of(tail[1] + " is mounted at " + unescape(head[4]));
            }
        }
        return Optional.empty();
    }

    private Optional<String> swapOf(List<String> names) {
        return lines(proc.resolve("swaps")).stream()
                .map(line -> line.split("\\s+")[0])
                .filter(source -> source.startsWith("/dev/") && names.contains(realName(Path.of(source))))
                .map(source -> source + " is used as swap space")
                .findFirst();
    }

    /** Encrypted and combined disks are mounted under other names, but hold the disks below them. */
    private Optional<String> holderOf(List<String> names) {
        for (String name : names) {
            try (DirectoryStream<Path> holders =
                    Files.newDirectoryStream(sys.resolve("class/block").resolve(name).resolve("holders"))) {
                for (Path holder : holders) {
                    return Optional.of("/dev/" + name + " is held by " + holder.getFileName());
                }
            } catch (IOException e) {
                // No such folder: nothing holds it.
            }
        }
        return Optional.empty();
    }

    private static List<String> lines(Path file) {
        try {
            return Files.readAllLines(file, StandardCharsets.ISO_8859_1);
        } catch (IOException e) {
            return List.of();
        }
    }

    /** Undoes the octal escapes that mountinfo uses for blanks. */
    private static String unescape(String text) {
        return text.replace("\\040", " ").replace("\\011", "\t").replace("\\012", "\n").replace("\\134", "\\");
    }
}
