package bootmend.fat.check;

/** The kinds of damage that a full look at a volume finds. */
public enum VolumeFault {
    BOOT_SECTOR("boot-sector-damaged", "a board or a computer may not find the volume at all"),
    BOOT_BACKUP("boot-backup-damaged", "nothing could take the place of the boot sector if that were hurt"),
    BEYOND_BELIEF("beyond-belief", "the boot sector may describe another volume than this, so no file is touched"),
    IMAGE_CUT_OFF("image-cut-off", "what lay behind the end is not in this image; read the card into an image again"),
    FAT_COPIES("fat-copies-differ", "one system may read files whole that another reads torn"),
    FAT_MARKS("fat-marks-wrong", "a system may take the FAT for one of another volume"),
    FS_INFO("fs-info-damaged", "systems that trust it may fill the volume wrongly"),
    IN_USE("dirty-mark", "the card was pulled, or the board hung, with the volume in use"),
    HARD_ERROR("hard-error-mark", "a system met a read or write error; the card may be wearing out"),
    CHAIN_LOOPS("chain-loops", "a reader that does not count never comes to its end"),
    CHAIN_INTO_FREE(
            "chain-into-free",
            "what came after is not its own any more, so it ends there and is to be copied onto the card again"),
    CHAIN_INTO_BAD(
            "chain-into-bad",
            "what came after cannot be read, so it ends there and is to be copied onto the card again"),
    CHAIN_OUTSIDE(
            "chain-outside",
            "what came after is not known any more, so it ends there and is to be copied onto the card again"),
    CROSS_LINKED("cross-linked", "which of them the shared clusters belong to cannot be told, so both are left alone"),
    CHAIN_SHORT(
            "chain-shorter-than-size",
            "what is missing is not known any more, so it ends there and may have to be copied onto the card again"),
    CHAIN_LONG("chain-longer-than-size", "the clusters behind its end are of no use to it"),
    NO_CHAIN(
            "size-without-chain",
            "nothing of its content can be found from here, so it is empty and is to be copied onto the card again"),
    NO_SIZE("chain-without-size", "it reads as empty though it has content"),
    LOST_CLUSTERS("lost-clusters", "they hold room, and perhaps pieces of files that are gone from their folders"),
    ORPHANED_LONG_NAMES("orphaned-long-names", "they do no harm, but a system without long names left them behind"),
    DUPLICATE_NAMES("duplicate-names", "which of them is read differs from system to system, so they are left alone"),
    BAD_ENTRY("bad-entry", "it may be noise, so it is left alone and with it whatever it shares clusters with"),
    FOLDER_LOST("folder-unreadable", "the files it held are not listed any more"),
    FOLDER_DOTS("folder-dots-wrong", "it may have been another folder before"),
    FOLDER_SIZE("folder-with-size", "a folder's entry gives no size; some systems refuse such a folder"),
    TOO_LARGE("too-large-to-check", "what lies beyond was not looked at");

    private final String id;
    private final String meaning;

    VolumeFault(String id, String meaning) {
        this.id = id;
        this.meaning = meaning;
    }

    /** Lower-case words joined by hyphens, the same in every version. */
    public String id() {
        return id;
    }

    /** Whether content may be lost or wrong where it is found; the others are signs, or mended without a loss. */
    public boolean hurtsFiles() {
        return switch (this) {
            case BOOT_BACKUP,
                    FS_INFO,
                    IN_USE,
                    HARD_ERROR,
                    FAT_MARKS,
                    LOST_CLUSTERS,
                    ORPHANED_LONG_NAMES,
                    NO_SIZE,
                    CHAIN_LONG,
                    FOLDER_DOTS,
                    FOLDER_SIZE,
                    TOO_LARGE -> false;
            default -> true;
        };
    }

    /** A clause on what follows from it. */
    public String meaning() {
        return meaning;
    }
}
