package bootmend.device.system;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * What Linux has mounted, from {@code /proc/self/mountinfo}.
 *
 * <p>Source: proc(5), section on mountinfo: fields 3 (device number), 5 (mount point), and the source after " - ".
 */
final class LinuxMounts {

    /** Where the running system's own files are. Source: Filesystem Hierarchy Standard 3.0, chapter 3; "/boot/*": common practice. */
    private static final Set<String> SYSTEM_POINTS =
            Set.of("/", "/usr", "/var", "/etc", "/boot", "/boot/efi", "/boot/firmware", "/efi");

    private final Path proc;
    private final Path sys;

    LinuxMounts(Path proc, Path sys) {
        this.proc = proc;
        this.sys = sys;
    }

    /**
     * One mount of a block device.
     *
     * @param names the kernel's names for the device: by its path and by its number, which differ for {@code /dev/root}
     */
    record Mount(String source, Set<String> names, String point) {

        boolean isSystem() {
            return SYSTEM_POINTS.contains(point);
        }
    }

    List<Mount> all() {
        List<Mount> mounts = new ArrayList<>();
        for (String line : lines(proc.resolve("self/mountinfo"))) {
            int dash = line.indexOf(" - ");
            String[] head = line.split(" ", -1);
            if (dash < 0 || head.length < 5) {
                continue;
            }
            String[] tail = line.substring(dash + 3).split(" ", -1);
            if (tail.length >= 2 && tail[1].startsWith("/dev/")) {
                Set<String> names = new TreeSet<>(Set.of(realName(Path.of(unescape(tail[1])))));
                byNumber(head[2], names);
                mounts.add(new Mount(unescape(tail[1]), names, unescape(head[4])));
            }
        }
        return mounts;
    }

    private void byNumber(String number, Set<String> names) {
        Path link = sys.resolve("dev/block").resolve(number);
        if (number.matches("\\d+:\\d+") && Files.exists(link)) {
            names.add(realName(link));
        }
    }

    /** The last part of the path that {@code device} really is. */
    static String realName(Path device) {
        try {
            return device.toRealPath().getFileName().toString();
        } catch (IOException e) {
            Path name = device.getFileName();
            return name == null ? "" : name.toString();
        }
    }

    static List<String> lines(Path file) {
        try {
            return Files.readAllLines(file, StandardCharsets.ISO_8859_1);
        } catch (IOException e) {
            return List.of();
        }
    }

    /** Undoes the octal escapes that mountinfo uses for blanks. */
    private static String unescape(String text) {
        return text.replace("\\040", " ")
                .replace("\\011", "\t")
                .replace("\\012", "\n")
                .replace("\\134", "\\");
    }
}
