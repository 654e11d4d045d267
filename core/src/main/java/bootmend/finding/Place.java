package bootmend.finding;

import java.util.OptionalInt;

/** Where on a card a finding is; a file whose name happens to be that of a region is not taken for it. */
public sealed interface Place {

    /** Where no path leads to. */
    enum Region implements Place {
        CARD("card"),
        PARTITION_TABLE("partition table"),
        BOOT_SECTOR("boot sector"),
        BOOT_BACKUP("backup of the boot sector"),
        FAT("FAT"),
        FS_INFO("FSInfo"),
        /** The bits in which a system says that it has the volume in use, or met an error on it. */
        FLAGS("volume flags"),
        /** The boot partition as a whole. */
        VOLUME("boot partition"),
        /** No one place: what is to be thought of in any case. */
        GENERAL("in general");

        private final String words;

        Region(String words) {
            this.words = words;
        }

        @Override
        public String path() {
            return words;
        }
    }

    /** @param path from the root folder, parts separated by {@code /}; empty for the root folder itself */
    record Folder(String path) implements Place {

        private static final String ROOT = "root folder";

        @Override
        public String words() {
            return path.isEmpty() ? ROOT : path;
        }
    }

    /** @param path from the root folder, parts separated by {@code /} */
    record File(String path) implements Place {}

    /**
     * One line of a text file.
     *
     * @param number counted from 1
     */
    record Line(String path, int number) implements Place {

        @Override
        public OptionalInt line() {
            return OptionalInt.of(number);
        }

        @Override
        public String words() {
            return path + " line " + number;
        }
    }

    static Place file(String path) {
        return new File(path);
    }

    static Place folder(String path) {
        return new Folder(path);
    }

    static Place line(String path, int number) {
        return new Line(path, number);
    }

    /** A path on the boot partition, or the region in words; not yet safe to show. */
    String path();

    /** The line's number, where it is one line of a text file. */
    default OptionalInt line() {
        return OptionalInt.empty();
    }

    /** Path and line in words; not yet safe to show. */
    default String words() {
        return path();
    }
}
