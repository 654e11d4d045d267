package bootmend.device.system;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import oshi.SystemInfo;
import oshi.hardware.HWDiskStore;
import oshi.hardware.HWPartition;

/** Lists disks with OSHI, and adds from the system what OSHI does not tell. */
final class OshiDisks implements DiskList {

    private final SystemDisks disks;

    OshiDisks(SystemDisks disks) {
        this.disks = disks;
    }

    @Override
    public List<AttachedDisk> now() {
        List<AttachedDisk> found = new ArrayList<>();
        for (HWDiskStore store : new SystemInfo().getHardware().getDiskStores()) {
            AttachedDisk disk = disk(store);
            if (disk.bytes() > 0) {
                found.add(disk);
            }
        }
        found.addAll(disks.unlisted(found.stream().map(AttachedDisk::path).toList()));
        found.sort(Comparator.comparing(disk -> disk.path().toString()));
        return found;
    }

    private AttachedDisk disk(HWDiskStore store) {
        Path path = disks.deviceOf(store.getName());
        Optional<DiskFacts> facts = disks.facts(path);
        return new AttachedDisk(
                path,
                facts.map(DiskFacts::bytes).filter(bytes -> bytes > 0).orElse(store.getSize()),
                store.getModel().strip(),
                facts.map(DiskFacts::bus).orElse(DiskFacts.UNKNOWN_BUS),
                facts.map(DiskFacts::removable).orElse(false),
                facts.map(DiskFacts::readOnly).orElse(false),
                disks.runningSystemOn(path),
                store.getPartitions().stream().map(this::partition).toList(),
                List.of());
    }

    private AttachedPartition partition(HWPartition partition) {
        String point = partition.getMountPoint();
        return new AttachedPartition(
                disks.deviceOf(partition.getIdentification()),
                partition.getSize(),
                partition.getType(),
                point == null || point.isBlank() ? List.of() : List.of(point));
    }
}
