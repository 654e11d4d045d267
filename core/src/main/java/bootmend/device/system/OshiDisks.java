package bootmend.device.system;

import bootmend.device.CardName;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import oshi.SystemInfo;
import oshi.hardware.HWDiskStore;
import oshi.hardware.HWPartition;

/** Lists disks with OSHI, and adds from the system what OSHI does not tell. */
final class OshiDisks implements DiskList {

    private final SystemDisks disks;
    private final Supplier<List<HWDiskStore>> listed;

    OshiDisks(SystemDisks disks) {
        this(disks, () -> new SystemInfo().getHardware().getDiskStores());
    }

    OshiDisks(SystemDisks disks, Supplier<List<HWDiskStore>> listed) {
        this.disks = disks;
        this.listed = listed;
    }

    @Override
    public List<AttachedDisk> now() {
        List<AttachedDisk> found = new ArrayList<>();
        for (HWDiskStore store : stores()) {
            AttachedDisk disk = disk(store);
            if (disk.bytes() > 0) {
                found.add(disk);
            }
        }
        found.addAll(disks.unlisted(found.stream().map(AttachedDisk::name).toList()));
        found.sort(Comparator.comparing(disk -> disk.name().text()));
        return found;
    }

    /** None where the library's native part does not load, as with some C libraries; the system itself is asked then. */
    private List<HWDiskStore> stores() {
        try {
            return listed.get();
        } catch (LinkageError e) {
            return List.of();
        }
    }

    private AttachedDisk disk(HWDiskStore store) {
        CardName name = disks.deviceOf(store.getName());
        Optional<DiskFacts> facts = disks.facts(name.text());
        return new AttachedDisk(
                name,
                facts.map(DiskFacts::bytes).filter(bytes -> bytes > 0).orElse(store.getSize()),
                store.getModel().strip(),
                facts.map(DiskFacts::bus).orElse(DiskFacts.UNKNOWN_BUS),
                facts.map(DiskFacts::removable).orElse(false),
                facts.map(DiskFacts::readOnly).orElse(false),
                disks.runningSystemOn(name.text()),
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
