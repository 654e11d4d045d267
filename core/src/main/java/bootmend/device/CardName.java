package bootmend.device;

import bootmend.CardException;
import java.io.File;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Objects;

/** What a user calls a card: an image file, a disk under the system's own name for it, or a folder where it is mounted. */
public sealed interface CardName {

    /** The name as it is shown and taken again on this system. */
    String text();

    /** The name by which anybody on this computer finds the same card, from whatever folder. */
    String absolute();

    /** A file, which may be an image or, where disks have names in the file system, a disk. */
    record FileName(Path path) implements CardName {

        public FileName {
            Objects.requireNonNull(path);
        }

        @Override
        public String text() {
            return path.toString();
        }

        @Override
        public String absolute() {
            return path.toAbsolutePath().normalize().toString();
        }
    }

    /** A disk or volume by a name that is no path, such as {@code \\.\PHYSICALDRIVE1} or {@code \\.\E:}. */
    record DeviceName(String name) implements CardName {

        public DeviceName {
            Objects.requireNonNull(name);
        }

        @Override
        public String text() {
            return name;
        }

        @Override
        public String absolute() {
            return name;
        }
    }

    /** A folder at which the system has mounted a boot partition. */
    record FolderName(Path path) implements CardName {

        public FolderName {
            Objects.requireNonNull(path);
        }

        @Override
        public String text() {
            return path.toString();
        }

        @Override
        public String absolute() {
            return path.toAbsolutePath().normalize().toString();
        }
    }

    /**
     * What {@code text} names on this computer; nothing is opened for it.
     *
     * @throws CardException of kind usage for an empty name or one that no file can have here, of kind unreadable where it
     *     names nothing, or something that is no card, such as a pipe
     */
    static CardName of(String text) throws CardException {
        return of(text, File.separatorChar == '\\');
    }

    /** @param windows whether that system's names for devices count */
    static CardName of(String text, boolean windows) throws CardException {
        if (text.isBlank()) {
            throw CardException.usage(
                    "the name of a card is empty",
                    "Name the card; if it came from a script, its variable may not be set.");
        }
        if (windows) {
            if (WindowsNames.device(text).isPresent()) {
                return new DeviceName(WindowsNames.device(text).get());
            }
            if (WindowsNames.isReserved(text)) {
                throw FileType.CHARACTER_DEVICE.refusal();
            }
        }
        Path path = path(windows ? WindowsNames.drive(text).orElse(text) : text);
        FileType type = FileType.of(path);
        if (type == FileType.FOLDER) {
            return new FolderName(path);
        }
        if (!type.isImageOrDisk()) {
            throw type.refusal();
        }
        return new FileName(path);
    }

    private static Path path(String text) throws CardException {
        try {
            return Path.of(text);
        } catch (InvalidPathException e) {
            throw CardException.usage(
                    text + " is no name of a file here (" + e.getReason() + ")", "Check the spelling.");
        }
    }

    /** A name of which nobody has looked yet what it leads to; only a device's own name is told from a file's. */
    static CardName unseen(Path path) {
        if (File.separatorChar == '\\') {
            String text = path.toString();
            if (WindowsNames.device(text).isPresent()) {
                return new DeviceName(WindowsNames.device(text).get());
            }
        }
        return new FileName(path);
    }
}
