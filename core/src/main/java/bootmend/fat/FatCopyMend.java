package bootmend.fat;

import java.io.IOException;
import java.util.BitSet;
import java.util.List;

/** Copies the sectors in which the FAT copies differ from the better copy to the others. */
final class FatCopyMend implements Mend {

    @Override
    public List<SectorChange> changes(Health health) throws IOException {
        BitSet sectors = health.comparison().sectors();
        if (sectors.isEmpty() || !health.isBelievable() || sectors.cardinality() > FatChoice.MAX_SECTORS) {
            return List.of();
        }
        Geometry geometry = health.geometry();
        VolumeBytes better = health.bytes();
        VolumeEdit edit = new VolumeEdit(FatVolume.open(health.volume()));
        for (int sector = sectors.nextSetBit(0); sector >= 0; sector = sectors.nextSetBit(sector + 1)) {
            long in = (long) sector * geometry.bytesPerSector();
            byte[] content = better.sector(geometry.fatStart(health.choice().copy()) + in);
            for (int copy : geometry.fatsInUse()) {
                edit.putSector(SectorKind.FAT, geometry.fatStart(copy) + in, content);
            }
        }
        return edit.takeStep();
    }
}
