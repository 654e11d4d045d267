package bootmend.job;

import bootmend.CardException;
import bootmend.change.CardId;
import bootmend.change.History;
import bootmend.change.OpenChange;
import bootmend.change.Recovery;
import bootmend.change.UndoStore;
import bootmend.device.CardOpener;
import bootmend.device.CardSource;
import bootmend.device.OutsideDeviceException;
import bootmend.device.PartitionWindow;
import bootmend.fat.BadVolumeException;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.partition.AutobootFile;
import bootmend.partition.BootChoice;
import bootmend.partition.BootVolumes;
import bootmend.partition.Partition;
import bootmend.partition.PartitionTable;
import bootmend.partition.PartitionTableReader;
import de.waldheinz.fs.BlockDevice;
import java.io.Closeable;
import java.io.IOException;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** A card whose boot partition was found and opened; no write is possible through it but by a plan. */
final class OpenCard implements Closeable {

    private final CardSource source;
    private final PartitionTable table;
    private final BootChoice choice;
    private final FatVolume volume;

    private final Optional<AutobootFile> autoboot;
    private final boolean forChanging;
    private Optional<OpenChange> waiting;

    private OpenCard(CardSource source, PartitionTable table, BootChoice choice, FatVolume volume,
            Optional<AutobootFile> autoboot, boolean forChanging) {
        this.autoboot = autoboot;
        this.source = source;
        this.forChanging = forChanging;
        this.table = table;
        this.choice = choice;
        this.volume = volume;
    }

    /** Opens the card that {@code request} names; every failure becomes an error that a user can act on. */
    static OpenCard open(CardOpener opener, CardRequest request, boolean forChanging) throws CardException {
        try {
            return open(opener.open(request.card(), forChanging), request, forChanging);
        } catch (CardException e) {
            throw e;
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    private static OpenCard open(CardSource source, CardRequest request, boolean forChanging) throws IOException {
        try {
            PartitionTable table = PartitionTableReader.read(source.device());
            Volumes volumes = new Volumes(source.device());
            BootChoice choice = BootChoice.of(table, volumes, request.partition());
            return new OpenCard(source, table, choice, volumes.opened(choice.partition()), volumes.autoboot, forChanging);
        } catch (IOException | RuntimeException e) {
            source.close();
            throw e;
        }
    }

    /** Whether it is held for a change, rather than opened to be looked at. */
    boolean isForChanging() {
        return forChanging;
    }

    CardSource source() {
        return source;
    }

    BlockDevice device() {
        return source.device();
    }

    PartitionTable table() {
        return table;
    }

    BootChoice choice() {
        return choice;
    }

    FatVolume volume() {
        return volume;
    }

    /** The boot partition alone. */
    BlockDevice window() throws IOException {
        return new PartitionWindow(device(), choice.partition().start(), choice.partition().length());
    }

    /** Whether a try-once start of this card takes another partition rather than another file. */
    boolean switchesPartition() {
        return autoboot.map(AutobootFile::switchesPartition).orElse(false);
    }

    CardId id() {
        return CardId.of(volume, choice.partition().start());
    }

    /** The path as this computer knows the card by, whichever way it was written. */
    String path() {
        return source.path().toAbsolutePath().normalize().toString();
    }

    Recovery recovery(UndoStore store) {
        return new Recovery(device(), id(), path(), store);
    }

    /** The change that waits on this card, as it was when this was first asked. */
    Optional<OpenChange> waiting(UndoStore store) throws IOException {
        if (waiting == null) {
            waiting = recovery(store).find();
        }
        return waiting;
    }

    History history(UndoStore store) throws IOException {
        return History.of(device(), volume, id(), path(), store);
    }

    @Override
    public void close() throws IOException {
        source.close();
    }

    /** Opens each partition that is asked about once, and keeps the volumes it found. */
    private static final class Volumes implements BootVolumes {

        private final BlockDevice card;
        private final Map<Integer, FatVolume> found = new HashMap<>();
        private Optional<AutobootFile> autoboot = Optional.empty();

        Volumes(BlockDevice card) {
            this.card = card;
        }

        @Override
        public Optional<Top> top(Partition partition) throws IOException {
            FatVolume volume;
            try {
                volume = FatVolume.open(new PartitionWindow(card, partition.start(), partition.length()));
                volume.root();
            } catch (BadVolumeException | OutsideDeviceException e) {
                return Optional.empty();
            }
            found.put(partition.number(), volume);
            Set<String> names = volume.root().entries().stream()
                    .filter(entry -> !entry.folder())
                    .map(entry -> entry.name().toLowerCase(Locale.ROOT))
                    .collect(Collectors.toSet());
            Optional<DirectoryEntry> file = volume.root().find(AutobootFile.NAME).filter(each -> !each.folder());
            if (file.isEmpty()) {
                return Optional.of(new Top(names, Optional.empty()));
            }
            byte[] bytes = volume.read(file.get(), AutobootFile.MAX_BYTES).bytes();
            autoboot = autoboot.or(() -> Optional.of(AutobootFile.parse(bytes)));
            return Optional.of(new Top(names, Optional.of(bytes)));
        }

        FatVolume opened(Partition partition) {
            return found.get(partition.number());
        }
    }
}
