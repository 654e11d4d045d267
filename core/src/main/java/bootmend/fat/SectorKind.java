package bootmend.fat;

/** What a sector of a volume is for, in the words used to show a plan. */
public enum SectorKind {
    BOOT_SECTOR("boot sector"),
    FS_INFO("FSInfo"),
    FAT("FAT"),
    DIRECTORY("folder"),
    DATA("data");

    private final String words;

    SectorKind(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
