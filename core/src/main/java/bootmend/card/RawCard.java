package bootmend.card;

import bootmend.CardException;
import bootmend.boot.BootCard;
import bootmend.boot.DeviceCard;
import bootmend.change.CardId;
import bootmend.change.ChangePlanner;
import bootmend.change.FilePlanner;
import bootmend.change.Interruption;
import bootmend.change.Medium;
import bootmend.change.Plan;
import bootmend.change.Recovery;
import bootmend.change.Target;
import bootmend.change.UndoStore;
import bootmend.device.CardSource;
import bootmend.device.OutsideDeviceException;
import bootmend.device.OverlayDevice;
import bootmend.device.PartitionWindow;
import bootmend.device.system.VolumeSerial;
import bootmend.fat.BadVolumeException;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fat.Geometry;
import bootmend.fat.check.VolumeCheck;
import bootmend.finding.Finding;
import bootmend.partition.AutobootFile;
import bootmend.partition.BootChoice;
import bootmend.partition.BootVolumes;
import bootmend.partition.Partition;
import bootmend.partition.PartitionSelection;
import bootmend.partition.PartitionTable;
import bootmend.partition.PartitionTableReader;
import bootmend.request.CardRequest;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** An image file or a block device, whose boot partition is read and written sector by sector. */
public final class RawCard implements OpenCard {

    /** What a boot sector holds in place of a label; source: "FAT: General Overview", "BS_VolLab". */
    private static final String NO_LABEL = "NO NAME";

    private final CardSource source;
    private final PartitionTable table;
    private final BootChoice choice;
    private final FatVolume volume;

    private final Optional<AutobootFile> autoboot;
    private final boolean forChanging;
    private Interruption waiting;

    private RawCard(
            CardSource source,
            PartitionTable table,
            BootChoice choice,
            FatVolume volume,
            Optional<AutobootFile> autoboot,
            boolean forChanging) {
        this.autoboot = autoboot;
        this.source = source;
        this.forChanging = forChanging;
        this.table = table;
        this.choice = choice;
        this.volume = volume;
    }

    static RawCard open(CardSource source, CardRequest request, boolean forChanging) throws CardException, IOException {
        try {
            PartitionSelection wanted = request.selection();
            PartitionTable table = wanted instanceof PartitionSelection.AtOffset place
                    ? PartitionTableReader.volumeAt(source.device(), place.bytes())
                    : PartitionTableReader.read(source.device());
            Volumes volumes = new Volumes(source.device());
            BootChoice choice = BootChoice.of(table, volumes, wanted);
            if (forChanging) {
                choice.refuseToChangeWhatWasSearched();
            }
            return new RawCard(
                    source, table, choice, volumes.opened(choice.partition()), volumes.autoboot, forChanging);
        } catch (CardException | IOException | RuntimeException e) {
            source.close();
            throw e;
        }
    }

    @Override
    public boolean isForChanging() {
        return forChanging;
    }

    @Override
    public String named() {
        return source.name().text();
    }

    @Override
    public String path() {
        return source.name().absolute();
    }

    @Override
    public String kind() {
        return source.kind().words();
    }

    @Override
    public long bytes() throws IOException {
        return source.bytes();
    }

    private BlockDevice device() {
        return source.device();
    }

    @Override
    public FatVolume volume() {
        return volume;
    }

    /** First byte of the boot partition on the card. */
    public long volumeStart() {
        return choice.partition().start();
    }

    /** The boot partition alone. */
    public PartitionWindow window() throws IOException {
        return new PartitionWindow(
                device(), choice.partition().start(), choice.partition().length());
    }

    @Override
    public PartitionView partition() throws IOException {
        Geometry geometry = volume.geometry();
        Partition partition = choice.partition();
        String label = volume.root().label().orElse(geometry.label().equals(NO_LABEL) ? "" : geometry.label());
        return new PartitionView(
                table.kind().words(),
                partition.number(),
                partition.firstSector(),
                sectors(),
                partition.sectorSize(),
                choice.reason(),
                geometry.type().name(),
                label,
                VolumeSerial.text(geometry.serial()),
                geometry.bytesPerCluster());
    }

    /** Of the boot partition; where nobody knows yet where the card ends, as its own boot sector says. */
    private long sectors() {
        Partition partition = choice.partition();
        return source.hasKnownSize()
                ? partition.sectors()
                : Math.min(partition.sectors(), volume.geometry().length() / partition.sectorSize());
    }

    @Override
    public List<String> tableWarnings() {
        return table.warnings();
    }

    /** A card that cannot be read so far has said so elsewhere. */
    @Override
    public List<Finding> fullLook() {
        try {
            return VolumeCheck.of(window()).findings();
        } catch (IOException e) {
            return List.of();
        }
    }

    @Override
    public BootCard bootCard() {
        return new DeviceCard(device(), source.hasKnownSize(), table, choice, volume);
    }

    /** The same as it would be once a plan for sectors was carried out; nothing is written. */
    public BootCard bootCardAfter(Plan plan) throws IOException {
        BlockDevice after = new OverlayDevice(device(), plan.contentAfter());
        Partition partition = choice.partition();
        FatVolume files = FatVolume.open(new PartitionWindow(after, partition.start(), partition.length()));
        return new DeviceCard(after, source.hasKnownSize(), table, choice, files);
    }

    @Override
    public boolean switchesPartition() {
        return autoboot.map(AutobootFile::switchesPartition).orElse(false);
    }

    @Override
    public CardId id() {
        return CardId.of(volume, choice.partition().start());
    }

    @Override
    public FilePlanner planner(LocalDateTime written, boolean inPlace) {
        return new ChangePlanner(volume, id(), written, inPlace);
    }

    @Override
    public Target target() throws IOException {
        Medium medium = new Medium(realPath(), source.key());
        return Target.ofCard(device(), window(), id(), medium, this::isStillNamed);
    }

    /** A name that leads nowhere any more does not lead to this card. */
    private boolean isStillNamed() {
        try {
            return source.isStillNamed();
        } catch (IOException e) {
            return false;
        }
    }

    /** A link and what it leads to are one card. */
    private String realPath() {
        try {
            return Path.of(path()).toRealPath().toString();
        } catch (IOException | InvalidPathException e) {
            return path();
        }
    }

    @Override
    public Interruption waiting(UndoStore store) throws CardException, IOException {
        if (waiting == null) {
            waiting = new Recovery(target(), store).look();
        }
        return waiting;
    }

    @Override
    public RawCard raw(String doing) {
        return this;
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
            Optional<DirectoryEntry> file =
                    volume.root().find(AutobootFile.NAME).filter(each -> !each.folder());
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
