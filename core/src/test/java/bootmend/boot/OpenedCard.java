package bootmend.boot;

import bootmend.CardException;
import bootmend.device.PartitionWindow;
import bootmend.fat.BadVolumeException;
import bootmend.fat.FatVolume;
import bootmend.partition.BootChoice;
import bootmend.partition.BootVolumes;
import bootmend.partition.Partition;
import bootmend.partition.PartitionTable;
import bootmend.partition.PartitionTableReader;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/** Opens a disk as a card, as whoever asks for a diagnosis does. */
final class OpenedCard {

    private OpenedCard() {}

    /** Says why the disk is no card where it is none. */
    static DeviceCard of(BlockDevice disk) throws IOException {
        try {
            return opened(disk);
        } catch (CardException e) {
            throw new IOException(e.getMessage(), e);
        }
    }

    private static DeviceCard opened(BlockDevice disk) throws CardException, IOException {
        PartitionTable table = PartitionTableReader.read(disk);
        Map<Integer, FatVolume> volumes = new HashMap<>();
        BootVolumes look = partition -> top(disk, partition, volumes);
        BootChoice choice = BootChoice.of(table, look, OptionalInt.empty());
        return new DeviceCard(
                disk, true, table, choice, volumes.get(choice.partition().number()));
    }

    private static Optional<BootVolumes.Top> top(BlockDevice disk, Partition partition, Map<Integer, FatVolume> volumes)
            throws IOException {
        try {
            FatVolume volume = FatVolume.open(new PartitionWindow(disk, partition.start(), partition.length()));
            volumes.put(partition.number(), volume);
            var file = volume.root().find("autoboot.txt");
            return Optional.of(new BootVolumes.Top(
                    volume.root().entries().stream()
                            .map(entry -> entry.name().toLowerCase(Locale.ROOT))
                            .collect(Collectors.toSet()),
                    file.isPresent() ? Optional.of(volume.read(file.get(), 512).bytes()) : Optional.empty()));
        } catch (BadVolumeException e) {
            return Optional.empty();
        }
    }

    static BootDiagnosis diagnosis(BlockDevice disk, BoardFacts facts) throws IOException {
        return BootDiagnosis.of(of(disk), facts, new BootTables(TuningTables.load()), Depth.CONTENTS);
    }
}
