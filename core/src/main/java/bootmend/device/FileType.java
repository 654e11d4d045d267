package bootmend.device;

import bootmend.CardException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;

/**
 * What stands behind a name in the file system, links followed; told without opening it, because opening a pipe waits for
 * its other end and some devices act on being opened.
 */
public enum FileType {
    FILE("a file"),
    FOLDER("a folder"),
    /** A disk, or a part of one, under a name in the file system. */
    DISK("a block device"),
    MISSING("nothing"),
    PIPE("a named pipe"),
    SOCKET("a socket"),
    CHARACTER_DEVICE("a character device, which has no sectors and may have no end"),
    /** Something there is no word for, or a link that leads to itself. */
    OTHER("neither a file nor a block device");

    /** What kind of file {@code unix:mode} speaks of. Source: the page inode(7), "The file type and mode". */
    private static final int TYPE_MASK = 0170000;

    private static final int TYPE_SOCKET = 0140000;
    private static final int TYPE_DISK = 0060000;
    private static final int TYPE_CHARACTER = 0020000;
    private static final int TYPE_PIPE = 0010000;

    /** One system gives each disk a second node without a cache, which is a character device. Source: the page hdiutil(1). */
    private static final String RAW_DISK = "/dev/rdisk\\d+(s\\d+)*";

    private final String words;

    FileType(String words) {
        this.words = words;
    }

    /** What it is, with its article, for a sentence. */
    public String words() {
        return words;
    }

    /** Whether a card can stand behind it: a file is an image, a disk a card in its reader. */
    public boolean isImageOrDisk() {
        return this == FILE || this == DISK;
    }

    /** Of what {@code path} leads to; an empty path leads nowhere, not to the current folder. */
    public static FileType of(Path path) {
        if (path.toString().isEmpty()) {
            return MISSING;
        }
        try {
            BasicFileAttributes attributes = Files.readAttributes(path, BasicFileAttributes.class);
            if (attributes.isRegularFile()) {
                return FILE;
            }
            return attributes.isDirectory() ? FOLDER : special(path);
        } catch (NoSuchFileException e) {
            return MISSING;
        } catch (IOException e) {
            // What may not be looked at is told apart where it is opened, and a link in a circle is no card.
            return Files.isSymbolicLink(path) ? OTHER : MISSING;
        }
    }

    private static FileType special(Path path) throws IOException {
        if (!path.getFileSystem().supportedFileAttributeViews().contains("unix")) {
            return OTHER;
        }
        int mode = (Integer) Files.getAttribute(path, "unix:mode");
        return switch (mode & TYPE_MASK) {
            case TYPE_DISK -> DISK;
            case TYPE_PIPE -> PIPE;
            case TYPE_SOCKET -> SOCKET;
            case TYPE_CHARACTER ->
                path.toAbsolutePath().normalize().toString().matches(RAW_DISK) ? DISK : CHARACTER_DEVICE;
            default -> OTHER;
        };
    }

    /** Why what is of this type is no card that is opened by sectors. */
    public CardException refusal() {
        if (this == MISSING) {
            return CardException.unreadable(
                    "there is no such file or device", "Check the spelling, and that the card is in its reader.");
        }
        return CardException.unreadable(
                "it is " + words + ", not a card image or a block device",
                "Name the image file, or the reader's device.");
    }
}
