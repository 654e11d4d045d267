package bootmend.boot;

import bootmend.device.OutsideDeviceException;
import bootmend.device.PartitionWindow;
import bootmend.fat.BadVolumeException;
import bootmend.fat.BootFiles;
import bootmend.fat.FatVolume;
import bootmend.partition.BootChoice;
import bootmend.partition.PartitionTable;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Optional;

/** A card that is read sector by sector. */
public final class DeviceCard implements BootCard {

    private final BlockDevice device;
    private final boolean knownSize;
    private final PartitionTable table;
    private final BootChoice choice;
    private final BootFiles volume;
    private CardLayout layout;

    /**
     * @param knownSize whether the device's size is where the card ends, and not a bound above it
     * @param volume the boot partition, open
     */
    public DeviceCard(
            BlockDevice device, boolean knownSize, PartitionTable table, BootChoice choice, BootFiles volume) {
        this.device = device;
        this.knownSize = knownSize;
        this.table = table;
        this.choice = choice;
        this.volume = volume;
    }

    @Override
    public CardLayout layout() throws IOException {
        if (layout == null) {
            layout = LayoutReader.read(device, table, knownSize);
        }
        return layout;
    }

    @Override
    public int bootPartition() {
        return choice.partition().number();
    }

    @Override
    public String choice() {
        return choice.reason();
    }

    @Override
    public BootFiles files() {
        return volume;
    }

    @Override
    public Optional<BootFiles> files(int partition) throws IOException {
        if (partition == bootPartition()) {
            return Optional.of(volume);
        }
        Optional<CardPartition> found = layout().number(partition);
        if (found.isEmpty()) {
            return Optional.empty();
        }
        try {
            FatVolume opened = FatVolume.open(
                    new PartitionWindow(device, found.get().start(), found.get().length()));
            opened.root();
            return Optional.of(opened);
        } catch (BadVolumeException | OutsideDeviceException e) {
            return Optional.empty();
        }
    }

    @Override
    public Optional<byte[]> bytes(CardPartition partition, long offset, int length) throws IOException {
        long from = partition.start() + offset;
        if (offset < 0 || from < 0 || from > device.getSize() - length) {
            return Optional.empty();
        }
        ByteBuffer bytes = ByteBuffer.allocate(length);
        try {
            device.read(from, bytes);
        } catch (OutsideDeviceException e) {
            return Optional.empty();
        }
        return Optional.of(bytes.array());
    }
}
