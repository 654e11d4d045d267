package bootmend.fat.check;

import bootmend.fat.BadVolumeException;
import bootmend.fat.BootSector;
import bootmend.fat.DirtyFlag;
import bootmend.fat.FatHead;
import bootmend.fat.FatTable;
import bootmend.fat.Geometry;
import bootmend.fat.VolumeBytes;
import bootmend.finding.Finding;
import bootmend.finding.Place;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A full look at a volume: boot sectors, FAT copies, FSInfo, marks, and every folder and chain.
 *
 * <p>It reads each FAT copy whole and every folder; steps are bounded by the clusters, memory by a few bits a cluster
 * and {@value TreeWalk#MAX_ENTRIES} entries.
 */
public final class VolumeCheck {

    /** On a card with few files that many may all be damaged by one cut. */
    private static final int FEW = 3;

    private final BlockDevice volume;
    private final BootSectors boot;
    private final boolean backupFirst;
    private final Look look;
    private final List<Finding> findings;

    /** What is to be seen with one boot sector; all but the geometry null where the image ends before the files. */
    private record Look(Geometry geometry, FatComparison comparison, FatChoice choice) {

        static Look at(BlockDevice volume, Geometry geometry, byte[] bootSector) throws IOException {
            if (geometry.dataStart() > volume.getSize()) {
                return new Look(geometry, null, null);
            }
            FatComparison comparison = FatComparison.of(new VolumeBytes(volume, geometry.bytesPerSector()), geometry);
            return new Look(
                    geometry, comparison, FatChoice.of(volume, geometry, BootSector.media(bootSector), comparison));
        }

        boolean isBetterThan(Look other) {
            return choice != null && (other.choice == null || choice.isBetterThan(other.choice));
        }
    }

    private VolumeCheck(BlockDevice volume, BootSectors boot, boolean backupFirst, Look look) throws IOException {
        this.volume = volume;
        this.boot = boot;
        this.backupFirst = backupFirst;
        this.look = look;
        this.findings = List.copyOf(find());
    }

    /**
     * Looks at the volume that begins at the start of {@code volume}.
     *
     * @throws BadVolumeException where there is none
     */
    public static VolumeCheck of(BlockDevice volume) throws IOException {
        BootSectors boot = BootSectors.read(volume);
        if (boot.geometry().isEmpty()) {
            return new VolumeCheck(
                    volume, boot, true, Look.at(volume, boot.backup().get().geometry(), boot.backupBytes()));
        }
        Look first = Look.at(volume, boot.geometry().get(), boot.first());
        if (boot.disagree()) {
            Look second = Look.at(volume, boot.backup().get().geometry(), boot.backupBytes());
            if (second.isBetterThan(first)) {
                return new VolumeCheck(volume, boot, true, second);
            }
        }
        return new VolumeCheck(volume, boot, false, first);
    }

    /** Everything that is wrong, from the boot sector to the files. */
    public List<Finding> findings() {
        return findings;
    }

    /** Whether the device ends before the volume does; nothing on such a volume is repaired. */
    public boolean isCutOff() throws IOException {
        return geometry().length() > volume.getSize();
    }

    private List<Finding> find() throws IOException {
        List<Finding> found = new ArrayList<>(boot.findings(backupFirst));
        if (isCutOff()) {
            found.add(VolumeFault.IMAGE_CUT_OFF.at(
                    Place.Region.CARD,
                    "the volume should have " + geometry().length() + " bytes, but only " + volume.getSize()
                            + " are there"));
            return found;
        }
        if (!look.comparison().isSame()) {
            found.add(VolumeFault.FAT_COPIES.at(
                    Place.Region.FAT,
                    "its copies differ in " + Counted.of(look.comparison().entries(), "place") + "; "
                            + choice().evidence()));
        }
        beyondBelief().ifPresent(why -> found.add(VolumeFault.BEYOND_BELIEF.at(Place.Region.VOLUME, why)));
        marks(found);
        found.addAll(tree().findings(geometry()));
        if (choice().count().lost() > 0) {
            found.add(VolumeFault.LOST_CLUSTERS.at(
                    Place.Region.FAT,
                    Counted.of(choice().count().lost(), "cluster") + " marked as in use, but of no file"));
        }
        found.addAll(fsInfo().findings());
        return found;
    }

    /**
     * Whether the boot sector describes this volume, by how its files come out; where it does not, repairing them would
     * ruin what is whole.
     */
    boolean isBelievable() {
        return beyondBelief().isEmpty();
    }

    private Optional<String> beyondBelief() {
        if (geometry().fatCount() > FatComparison.MAX_COPIES) {
            return Optional.of("the boot sector gives " + geometry().fatCount() + " FAT copies");
        }
        List<TreeFile> files = tree().files();
        if (files.isEmpty() && choice().count().lost() > 0) {
            return Optional.of("no file is listed, though clusters are in use");
        }
        long damaged = files.stream()
                .filter(file -> file.finding(geometry()).isPresent())
                .count();
        return damaged > Math.max(FEW, files.size() / 2)
                ? Optional.of(damaged + " of " + files.size() + " files and folders do not fit their chains")
                : Optional.empty();
    }

    private void marks(List<Finding> found) throws IOException {
        FatHead head = head();
        if (!head.marked()) {
            found.add(VolumeFault.FAT_MARKS.at(Place.Region.FAT, "its first two entries are not what belongs there"));
            return;
        }
        DirtyFlag dirtyFlag = dirtyFlag();
        if (dirtyFlag.inUse() || !dirtyFlag.cleanShutdown()) {
            found.add(VolumeFault.IN_USE.at(Place.Region.FLAGS, "the volume is marked as still in use"));
        }
        if (!dirtyFlag.noHardError()) {
            found.add(VolumeFault.HARD_ERROR.at(Place.Region.FLAGS, "the volume is marked as having met an error"));
        }
    }

    FatHead head() throws IOException {
        return FatHead.read(
                new FatTable(bytes(), geometry(), choice().copy()), geometry().type(), media());
    }

    DirtyFlag dirtyFlag() throws IOException {
        return DirtyFlag.of(
                backupFirst ? boot.backupBytes() : boot.first(), geometry().type(), head());
    }

    int media() {
        return BootSector.media(backupFirst ? boot.backupBytes() : boot.first());
    }

    FsInfoCheck fsInfo() throws IOException {
        return FsInfoCheck.of(bytes(), geometry(), choice().count().free());
    }

    BootSectors boot() {
        return boot;
    }

    boolean isBackupFirst() {
        return backupFirst;
    }

    Geometry geometry() {
        return look.geometry();
    }

    FatComparison comparison() {
        return look.comparison();
    }

    FatChoice choice() {
        return look.choice();
    }

    Tree tree() {
        return look.choice().tree();
    }

    /** The volume as it is. */
    BlockDevice volume() {
        return volume;
    }

    /** The volume as it reads with the better FAT copy. */
    VolumeBytes bytes() {
        return new VolumeBytes(choice().readable(volume), geometry().bytesPerSector());
    }
}
