package bootmend.batch;

import bootmend.device.FileType;

/** Why a file that a pattern fits, or that a folder holds, is not taken for a card. */
public enum LeftOut {
    PIPE("named pipe", "named pipes"),
    SOCKET("socket", "sockets"),
    CHARACTER_DEVICE("character device", "character devices"),
    SPECIAL("special file", "special files"),
    LOST_LINK("link that leads nowhere", "links that lead nowhere"),
    FOLDER("folder inside, which is named by itself", "folders inside, which are named by themselves"),
    /** What some desktop systems keep beside a file, on disks that cannot keep it with the file. Common practice. */
    DESKTOP("file that a desktop keeps beside others (._*)", "files that a desktop keeps beside others (._*)"),
    PACKED("packed image, which is changed only unpacked", "packed images, which are changed only unpacked");

    private final String one;
    private final String many;

    LeftOut(String one, String many) {
        this.one = one;
        this.many = many;
    }

    /** So many of them, such as {@code 2 named pipes}. */
    String words(int count) {
        return count + " " + (count == 1 ? one : many);
    }

    static LeftOut of(FileType type) {
        return switch (type) {
            case PIPE -> PIPE;
            case SOCKET -> SOCKET;
            case CHARACTER_DEVICE -> CHARACTER_DEVICE;
            case MISSING -> LOST_LINK;
            case FOLDER -> FOLDER;
            case FILE, DISK, OTHER -> SPECIAL;
        };
    }
}
