package bootmend.fat.check;

import bootmend.fat.FatVolume;
import bootmend.fat.FsInfo;
import bootmend.fat.SectorChange;
import bootmend.fat.VolumeEdit;
import java.io.IOException;
import java.util.List;

/** Counts FSInfo's values anew where they are wrong; values that are said not to be known stay so. */
final class FsInfoRepair implements VolumeRepair {

    @Override
    public List<SectorChange> changes(VolumeCheck check) throws IOException {
        FsInfoCheck fsInfo = check.fsInfo();
        if (fsInfo.findings().isEmpty()
                || !check.isBelievable()
                || !check.comparison().isSame()) {
            return List.of();
        }
        FatCount count = check.choice().count();
        long hint = count.firstFree() == 0 ? FsInfoCheck.UNKNOWN : count.firstFree();
        FsInfo old = fsInfo.info().orElse(new FsInfo(0, hint));
        boolean countKnown = old.freeCount() != FsInfoCheck.UNKNOWN;
        VolumeEdit edit = new VolumeEdit(FatVolume.open(check.volume()));
        edit.putFsInfo(
                new FsInfo(countKnown ? count.free() : old.freeCount(), fsInfo.isHintWrong() ? hint : old.nextFree()));
        return edit.takeStep();
    }
}
