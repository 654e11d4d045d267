package bootmend.partition;

import bootmend.device.OutsideDeviceException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Looks for FAT volumes to which no table leads, by their boot sectors and the copies that FAT32 keeps of those, at the
 * places where partitions begin: at whole mebibytes, and at whole tracks and cylinders of the old geometry.
 *
 * <p>Sources: "FAT: General Overview of On-Disk Format", version 1.03, boot sector fields and "BPB_BkBootSec"; for the
 * places: common practice, no source. Some thousand sectors are read at most, none past the first two gibibytes.
 */
final class LostVolumes {

    private static final long SECTOR = 512;
    private static final long MIB = 1 << 20;
    private static final long TRACK = 63 * SECTOR;
    private static final long CYLINDER = 255 * TRACK;
    /** As far as every mebibyte is looked at; after that, every fourth, as card tools align. */
    private static final long DENSE = 256 * MIB;

    private static final long MOST = 2048 * MIB;
    private static final int MOST_FOUND = 8;

    private final ExtendedChain.Sectors sectors;
    private final long size;

    LostVolumes(ExtendedChain.Sectors sectors, long size) {
        this.sectors = sectors;
        this.size = size;
    }

    /** In the order of their places, numbered from 1 on; none lies in another. */
    List<Partition> search() throws IOException {
        List<Partition> found = new ArrayList<>();
        long end = 0;
        for (long place : places()) {
            if (found.size() == MOST_FOUND) {
                return found;
            }
            try {
                Optional<Partition> volume =
                        place < end ? Optional.empty() : at(place, found.size() + 1, Partition.Origin.SEARCH);
                if (volume.isPresent()) {
                    found.add(volume.get());
                    end = place + volume.get().length();
                }
            } catch (OutsideDeviceException e) {
                // A packed image ends where nobody knew.
                return found;
            }
        }
        return found;
    }

    private SortedSet<Long> places() {
        SortedSet<Long> places = new TreeSet<>();
        for (long place = MIB; place < Math.min(MOST, size); place += place < DENSE ? MIB : 4 * MIB) {
            places.add(place);
        }
        for (long place = TRACK; place < Math.min(64 * TRACK, size); place += TRACK) {
            places.add(place);
        }
        for (long place = CYLINDER; place < Math.min(DENSE, size); place += CYLINDER) {
            places.add(place);
            places.add(place + TRACK);
        }
        return places;
    }

    /** The volume that begins there, as its boot sector or the copy says. */
    Optional<Partition> at(long place, int number, Partition.Origin origin) throws IOException {
        Optional<ByteBuffer> boot = bootSector(place);
        for (int unit = PartitionTableReader.MIN_SECTOR;
                boot.isEmpty() && unit <= PartitionTableReader.MAX_SECTOR;
                unit *= 2) {
            boot = bootSector(place + (long) VolumeStart.BACKUP_SECTOR * unit).filter(VolumeStart::isFat32WithBackup);
        }
        return boot.map(sector -> {
            int unit = VolumeStart.bytesPerSector(sector);
            long first = place / SECTOR;
            long length = VolumeStart.sectors(sector) * unit / SECTOR;
            Partition volume = new Partition(
                    number, first, length, (int) SECTOR, "none", true, Optional.empty(), "", origin, true);
            return volume.length() > size - place ? volume.cutOff() : volume;
        });
    }

    private Optional<ByteBuffer> bootSector(long place) throws IOException {
        if (place > size - SECTOR) {
            return Optional.empty();
        }
        ByteBuffer sector = sectors.at(place);
        return VolumeStart.hasSignature(sector) && VolumeStart.looksLikeFat(sector) && VolumeStart.sectors(sector) > 0
                ? Optional.of(sector)
                : Optional.empty();
    }
}
