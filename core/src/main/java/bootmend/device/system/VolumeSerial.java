package bootmend.device.system;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;

/**
 * The serial number of the FAT volume that is mounted at a folder, where the system tells it.
 *
 * <p>Linux: the name under {@code /dev/disk/by-uuid} of what mountinfo has mounted there. Windows: the file store's
 * attribute {@code volume:vsn}, never run. Others: not told.
 */
public final class VolumeSerial {

    private VolumeSerial() {}

    /** A serial number of 32 bits as systems show it, such as {@code 1A2B-3C4D}. */
    public static String text(long serial) {
        return new StringBuilder(HexFormat.of().withUpperCase().toHexDigits(serial, 8))
                .insert(4, '-')
                .toString();
    }

    /** 32 bits; 0 where the system does not tell it. */
    public static long of(Path folder) {
        try {
            Object serial = Files.getFileStore(folder).getAttribute("volume:vsn");
            return serial instanceof Integer number ? Integer.toUnsignedLong(number) : 0;
        } catch (IOException | UnsupportedOperationException e) {
            return of(folder, new LinuxMounts(Path.of("/proc"), Path.of("/sys")), Path.of("/dev/disk/by-uuid"));
        }
    }

    static long of(Path folder, LinuxMounts mounts, Path byUuid) {
        for (LinuxMounts.Mount mount : mounts.all()) {
            if (mount.point().equals(folder.toString())) {
                return serial(mount, byUuid);
            }
        }
        return 0;
    }

    /** A FAT volume's name there is its serial number as {@code 1A2B-3C4D}; other file systems have longer ones. */
    private static long serial(LinuxMounts.Mount mount, Path byUuid) {
        try (DirectoryStream<Path> names = Files.newDirectoryStream(byUuid)) {
            for (Path name : names) {
                String text = name.getFileName().toString();
                if (text.matches("[0-9A-F]{4}-[0-9A-F]{4}") && mount.names().contains(LinuxMounts.realName(name))) {
                    return Long.parseLong(text.replace("-", ""), 16);
                }
            }
        } catch (IOException e) {
            return 0;
        }
        return 0;
    }
}
