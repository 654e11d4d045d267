package bootmend.card;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.boot.BootCard;
import bootmend.boot.FilesCard;
import bootmend.change.CardId;
import bootmend.change.FilePlanner;
import bootmend.change.FolderPlanner;
import bootmend.change.Interruption;
import bootmend.change.Medium;
import bootmend.change.Recovery;
import bootmend.change.Target;
import bootmend.change.UndoStore;
import bootmend.device.system.MediumKey;
import bootmend.device.system.VolumeSerial;
import bootmend.fat.BootFiles;
import bootmend.fat.DirectoryEntry;
import bootmend.finding.Finding;
import bootmend.folder.MountedFolder;
import bootmend.partition.AutobootFile;
import bootmend.request.CardRequest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/** A boot partition that the system has mounted; its files are changed through the system. */
final class FolderCard implements OpenCard {

    private static final int SECTOR = 512;

    private final Path named;
    private final MountedFolder folder;
    private final long serial;
    private final CardId id;
    private final boolean forChanging;
    private final boolean switchesPartition;
    private final String key;
    private Interruption waiting;

    private FolderCard(Path named, MountedFolder folder, boolean forChanging) throws IOException {
        this.named = named;
        this.folder = folder;
        this.forChanging = forChanging;
        this.key = new MediumKey().ofFolder(folder.path());
        this.serial = VolumeSerial.of(folder.path());
        this.id = CardId.ofFolder(serial, folder.bytes());
        Optional<DirectoryEntry> autoboot =
                folder.root().find(AutobootFile.NAME).filter(entry -> !entry.folder());
        this.switchesPartition = autoboot.isPresent()
                && AutobootFile.parse(folder.read(autoboot.get(), AutobootFile.MAX_BYTES)
                                .bytes())
                        .switchesPartition();
    }

    /** {@code E:} names a drive's current folder, not its root, which is what a user means by it. */
    static Path folder(Path named) {
        return named.toString().matches("[A-Za-z]:") ? Path.of(named + "\\") : named;
    }

    static FolderCard open(CardRequest request, Path path, boolean forChanging) throws CardException, IOException {
        if (request.partition().isPresent()) {
            throw CardException.usage(
                    "a mounted folder is one partition already", "", NextStep.Plain.LEAVE_PARTITION_OUT);
        }
        MountedFolder folder = MountedFolder.open(path);
        if (forChanging && !Files.isWritable(folder.path())) {
            throw CardException.refused(
                    "you have no right to write to it, or it is mounted read-only",
                    "Check the card's lock tab and your rights to the folder.");
        }
        return new FolderCard(request.card(), folder, forChanging);
    }

    @Override
    public boolean isForChanging() {
        return forChanging;
    }

    @Override
    public String named() {
        return named.toString();
    }

    @Override
    public String path() {
        return folder.path().toString();
    }

    @Override
    public String kind() {
        return "mounted folder";
    }

    @Override
    public long bytes() throws IOException {
        return folder.bytes();
    }

    @Override
    public BootFiles volume() {
        return folder;
    }

    @Override
    public PartitionView partition() throws IOException {
        String text = serial == 0 ? "" : VolumeSerial.text(serial);
        return new PartitionView(
                "not seen", 0, 0, folder.bytes() / SECTOR, SECTOR, "the mounted folder", folder.type(), "", text, 0);
    }

    @Override
    public List<String> tableWarnings() {
        return List.of();
    }

    @Override
    public List<Finding> fullLook() {
        return List.of();
    }

    @Override
    public BootCard bootCard() {
        return new FilesCard(folder);
    }

    @Override
    public boolean switchesPartition() {
        return switchesPartition;
    }

    @Override
    public CardId id() {
        return id;
    }

    @Override
    public FilePlanner planner(LocalDateTime written, boolean inPlace) {
        return new FolderPlanner(folder, id);
    }

    @Override
    public Target target() {
        Medium medium = new Medium(path(), key);
        return Target.ofFolder(folder, id, medium, () -> key.equals(new MediumKey().ofFolder(folder.path())));
    }

    @Override
    public Interruption waiting(UndoStore store) throws CardException, IOException {
        if (waiting == null) {
            waiting = new Recovery(target(), store).look();
        }
        return waiting;
    }

    @Override
    public RawCard raw(String doing) throws CardException {
        throw CardException.refused(
                "a mounted folder cannot be " + doing + ": what may be damaged lies below what the "
                        + "system shows of it",
                "Unmount the card, leave it in its reader, and name the reader's device or an image of the card.",
                NextStep.Plain.LIST_CARDS);
    }

    /** The folder stays mounted; there is nothing to let go of. */
    @Override
    public void close() {
        // Every file is closed after each access.
    }
}
