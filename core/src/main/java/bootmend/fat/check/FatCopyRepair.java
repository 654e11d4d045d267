package bootmend.fat.check;

import bootmend.fat.FatVolume;
import bootmend.fat.Geometry;
import bootmend.fat.SectorChange;
import bootmend.fat.SectorKind;
import bootmend.fat.VolumeBytes;
import bootmend.fat.VolumeEdit;
import java.io.IOException;
import java.util.BitSet;
import java.util.List;

/** Copies the sectors in which the FAT copies differ from the better copy to the others. */
final class FatCopyRepair implements VolumeRepair {

    @Override
    public List<SectorChange> changes(VolumeCheck check) throws IOException {
        BitSet sectors = check.comparison().sectors();
        if (sectors.isEmpty() || !check.isBelievable() || sectors.cardinality() > FatChoice.MAX_SECTORS) {
            return List.of();
        }
        Geometry geometry = check.geometry();
        VolumeBytes better = check.bytes();
        VolumeEdit edit = new VolumeEdit(FatVolume.open(check.volume()));
        for (int sector = sectors.nextSetBit(0); sector >= 0; sector = sectors.nextSetBit(sector + 1)) {
            long in = (long) sector * geometry.bytesPerSector();
            byte[] content = better.sector(geometry.fatStart(check.choice().copy()) + in);
            for (int copy : geometry.fatsInUse()) {
                edit.putSector(SectorKind.FAT, geometry.fatStart(copy) + in, content);
            }
        }
        return edit.takeStep();
    }
}
