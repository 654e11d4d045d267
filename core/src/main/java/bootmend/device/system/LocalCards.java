package bootmend.device.system;

import bootmend.CardException;
import bootmend.ReportedIOException;
import bootmend.device.CardName;
import bootmend.device.CardOpener;
import bootmend.device.CardSource;
import bootmend.device.FileType;
import bootmend.device.Medium;
import bootmend.device.packed.PackedFormat;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Optional;

/**
 * Opens this computer's image files and disks as cards.
 *
 * <p>Refused, each with its own words, is what is missing, empty, no file and no disk, not permitted, in use by the running
 * system, being changed by another bootmend, not what it was a moment ago, or, for a change, such that the system cannot
 * sync it.
 */
public final class LocalCards implements CardOpener {

    /** An image does not say what sectors its card had; all tables but the rarest count in these. */
    private static final int IMAGE_SECTOR = 512;

    private final SystemDisks disks;
    private final ChangeRules rules;

    /** @param fixed whether disks that do not look like a card may be changed */
    public LocalCards(FixedDisks fixed) {
        this(SystemDisks.ofThisComputer(), fixed);
    }

    LocalCards(SystemDisks disks, FixedDisks fixed) {
        this.disks = disks;
        this.rules = new ChangeRules(disks, fixed);
    }

    @Override
    public CardSource open(CardName name, boolean forChanging) throws CardException, IOException {
        if (name instanceof CardName.DeviceName device) {
            return openDisk(device, device.name(), forChanging);
        }
        Path path = path(name);
        FileType type = FileType.of(path);
        return switch (type) {
            case FILE -> openFile(path, forChanging);
            case DISK -> openDisk(name, path.toString(), forChanging);
            default -> throw type.refusal();
        };
    }

    private static Path path(CardName name) throws CardException {
        if (name.text().isEmpty()) {
            CardName.of(name.text());
        }
        return Path.of(name.text());
    }

    private CardSource openFile(Path path, boolean change) throws CardException, IOException {
        Optional<PackedFormat> format = PackedFormat.of(path);
        if (format.isEmpty()) {
            return openImage(path, change);
        }
        if (change) {
            throw format.get().notChanged(path);
        }
        Medium identity = identityOf(path);
        refuseWithoutRights(path, false);
        return format.get().open(path).identifiedBy(identity, () -> identityOf(path));
    }

    private CardSource openImage(Path path, boolean change) throws CardException, IOException {
        if (change) {
            rules.checkImage(path);
        }
        refuseWithoutRights(path, change);
        Medium before = identityOf(path);
        RawFile file = opened(() -> ChannelFile.open(path, change));
        try {
            if (change) {
                lock(file);
                trySync(file);
            }
            long size = file.size();
            refuseEmpty(size, "Read the card into the image again.");
            return CardSource.of(
                            new CardName.FileName(path),
                            CardSource.Kind.IMAGE,
                            new SectorDevice(file, size, IMAGE_SECTOR, 1, !change, DiskHold.NONE))
                    .identifiedBy(sameAs(before, identityOf(path)), () -> identityOf(path));
        } catch (CardException | IOException | RuntimeException e) {
            closeAfter(e, file);
            throw e;
        }
    }

    /** A disk that is to be changed is held before it is opened, so that nothing can come between. */
    private CardSource openDisk(CardName name, String device, boolean change) throws CardException, IOException {
        DiskHold hold = DiskHold.NONE;
        if (name instanceof CardName.FileName file) {
            refuseWithoutRights(file.path(), change);
        }
        if (change) {
            rules.checkDevice(device);
            hold = disks.hold(device);
        }
        try {
            return openHeld(name, device, change, hold);
        } catch (CardException | IOException | RuntimeException e) {
            closeAfter(e, hold);
            throw e;
        }
    }

    private CardSource openHeld(CardName name, String device, boolean change, DiskHold hold)
            throws CardException, IOException {
        Medium before = disks.medium(device);
        RawFile file = opened(() -> disks.open(device, change));
        try {
            if (change) {
                lock(file);
                trySync(file);
            }
            Optional<DiskFacts> facts = disks.facts(device);
            int sector = facts.map(DiskFacts::logicalSector).orElse(DiskFacts.DEFAULT_SECTOR);
            int alignment = facts.map(DiskFacts::physicalSector).orElse(sector);
            long size = Math.max(file.size(), facts.map(DiskFacts::bytes).orElse(0L));
            if (size == 0) {
                size = new SizeProbe(file, alignment).size();
            }
            refuseEmpty(size, "Put a card in the reader, or take it out and put it back in.");
            return CardSource.of(
                            name,
                            CardSource.Kind.BLOCK_DEVICE,
                            new SectorDevice(file, size, sector, alignment, !change, hold))
                    .identifiedBy(sameAs(before, disks.medium(device)), () -> disks.medium(device));
        } catch (CardException | IOException | RuntimeException e) {
            closeAfter(e, file);
            throw e;
        }
    }

    /** Closes what is not to be kept open because of {@code first}; what that fails with is told beside it. */
    private static void closeAfter(Exception first, Closeable open) {
        try {
            open.close();
        } catch (IOException e) {
            first.addSuppressed(e);
        }
    }

    /**
     * An image by its file, wherever it is moved to. The number is of the file system's and stays with the file; where there
     * is none, the time at which the file was made stands in for it.
     */
    private static Medium identityOf(Path image) throws IOException {
        BasicFileAttributes attributes = Files.readAttributes(image, BasicFileAttributes.class);
        Object key = attributes.fileKey();
        return new Medium(
                image.toRealPath().toString(),
                Optional.of(key == null ? "made " + attributes.creationTime() : key.toString()),
                Optional.empty(),
                Optional.empty());
    }

    /** What was opened is what the name led to before and after; in between it can have led elsewhere for no time that counts. */
    private static Medium sameAs(Medium before, Medium after) throws CardException {
        if (!before.isStill(after)) {
            throw CardException.refused(
                    "another file or card took its place while it was being opened",
                    "Check which card is there now, then try again.");
        }
        return after;
    }

    private static void refuseEmpty(long size, String remedy) throws CardException {
        if (size == 0) {
            throw CardException.unreadable("it is empty", remedy);
        }
    }

    private static void refuseWithoutRights(Path path, boolean change) throws CardException {
        if (!Files.isReadable(path)) {
            throw notReadable(null);
        }
        if (change && !Files.isWritable(path)) {
            throw notWritable(null);
        }
    }

    private static CardException notReadable(IOException cause) {
        return CardException.unreadable(
                "you have no right to read it",
                "Ask whoever runs this computer for the right to read it, or make an image of the card and use that.",
                cause);
    }

    private static CardException notWritable(IOException cause) {
        return CardException.refused(
                "you have no right to write to it",
                "Check the card's lock tab and the file's permissions, or work on a copy of the image.",
                cause);
    }

    @FunctionalInterface
    private interface Opening {
        RawFile open() throws IOException;
    }

    private static RawFile opened(Opening opening) throws CardException {
        try {
            return opening.open();
        } catch (ReportedIOException e) {
            throw e.report();
        } catch (AccessDeniedException e) {
            throw notReadable(e);
        } catch (IOException e) {
            String reason = e instanceof FileSystemException file && file.getReason() != null
                    ? file.getReason()
                    : e.getMessage();
            throw CardException.unreadable(
                    "it could not be opened (" + reason + ")",
                    "Check that the card sits firmly in its reader and that no other program holds it.",
                    e);
        }
    }

    private static void lock(RawFile file) throws CardException {
        boolean locked;
        try {
            locked = file.lock();
        } catch (IOException e) {
            throw CardException.refused(
                    "it could not be locked against other changes (" + e.getMessage() + ")",
                    "Copy the image to a disk of this computer and work on the copy.",
                    e);
        }
        if (!locked) {
            throw CardException.refused("another bootmend is changing it", "Wait until it is done, then try again.");
        }
    }

    /** Nothing was written yet: what cannot be synced now could not be after a write either. */
    private static void trySync(RawFile file) throws CardException {
        try {
            file.sync();
        } catch (IOException e) {
            throw CardException.refused(
                    "the system cannot sync it (" + e.getMessage() + "), so nothing written to it could be relied on",
                    "Put the card into another reader, or copy the image to a disk of this computer; nothing was written.",
                    e);
        }
    }
}
