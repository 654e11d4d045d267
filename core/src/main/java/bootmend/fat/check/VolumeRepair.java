package bootmend.fat.check;

import bootmend.fat.SectorChange;
import java.io.IOException;
import java.util.List;

/** One kind of repair: the sectors of a volume that it changes, worked out and written nowhere. */
@FunctionalInterface
public interface VolumeRepair {

    /** The changes for the volume that {@code check} looked at; none where there is nothing of the kind to repair. */
    List<SectorChange> changes(VolumeCheck check) throws IOException;

    /** The boot sector from its backup, or the backup from the boot sector. */
    static VolumeRepair bootSectors() {
        return new BootSectorRepair();
    }

    /** All FAT copies made equal to the better one; only after {@link #bootSectors}. */
    static VolumeRepair fatCopies() {
        return new FatCopyRepair();
    }

    /**
     * Chains cut at their last good cluster, sizes and chains made to agree, orphaned long-name slots marked deleted;
     * only after {@link #fatCopies}. Files that share clusters are left wholly alone.
     */
    static VolumeRepair filesAndFolders() {
        return new FileRepair();
    }

    /** Clusters that belong to no file marked free; only after {@link #filesAndFolders}, and only with all folders read. */
    static VolumeRepair lostClusters() {
        return new LostClusterRepair();
    }

    /** FSInfo counted anew where it is wrong; only after all that changes the FAT. */
    static VolumeRepair fsInfo() {
        return new FsInfoRepair();
    }

    /**
     * The marks of a volume in use or with errors taken away, and the FAT's first two entries put right, where nothing
     * else is wrong any more; the mark of an error only where every cluster in use was read without one.
     */
    static VolumeRepair marks() {
        return new FlagRepair();
    }
}
