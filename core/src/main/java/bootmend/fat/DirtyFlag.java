package bootmend.fat;

import java.util.ArrayList;
import java.util.List;

/**
 * What a volume says of how it was last put away.
 *
 * <p>Sources: "FAT: General Overview of On-Disk Format", version 1.03, "FAT Data Structure" for entry 1; that bit 0 of
 * byte 37 (FAT12, FAT16) or 65 (FAT32) of the boot sector says the same is common practice, no source.
 *
 * @param inUse whether the boot sector's flag is set
 * @param cleanShutdown as entry 1 of the FAT says
 * @param noHardError as entry 1 of the FAT says
 */
public record DirtyFlag(boolean inUse, boolean cleanShutdown, boolean noHardError) {

    public static final int IN_USE = 0x01;

    public static DirtyFlag of(byte[] bootSector, FatType type, FatHead head) {
        return new DirtyFlag((bootSector[flagOffset(type)] & IN_USE) != 0, head.cleanShutdown(), head.noHardError());
    }

    public static int flagOffset(FatType type) {
        return type == FatType.FAT32 ? 65 : 37;
    }

    /** Sentences for whoever looks at the card. */
    List<String> words() {
        List<String> words = new ArrayList<>();
        if (inUse || !cleanShutdown) {
            words.add("the volume is marked as still in use: it was not put away in order");
        }
        if (!noHardError) {
            words.add("the volume is marked as having met a read or write error");
        }
        return words;
    }
}
