package bootmend.device.system;

import bootmend.CardException;
import bootmend.device.CardOpener;
import bootmend.device.CardSource;
import bootmend.device.packed.PackedFormat;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Opens this computer's image files and disks as cards.
 *
 * <p>Refused, each with its own words, is what is missing, empty, a folder, not permitted, in use by the running system,
 * or being changed by another bootmend.
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
    public CardSource open(Path path, boolean forChanging) throws IOException {
        refuseWhatIsNoFileOrDevice(path);
        if (!Files.isRegularFile(path)) {
            return openDevice(path, forChanging);
        }
        Optional<PackedFormat> format = PackedFormat.of(path);
        return format.isPresent() ? openPacked(path, format.get(), forChanging) : openImage(path, forChanging);
    }

    private static void refuseWhatIsNoFileOrDevice(Path path) throws CardException {
        if (!Files.exists(path)) {
            throw CardException.unreadable(
                    "there is no such file or device", "Check the spelling, and that the card is in its reader.");
        }
        if (Files.isDirectory(path)) {
            throw CardException.unreadable(
                    "it is a folder, not a card image or a block device",
                    "Name the image file, or the reader's device.");
        }
    }

    private static CardSource openPacked(Path path, PackedFormat format, boolean change) throws IOException {
        if (change) {
            throw format.notChanged(path);
        }
        openFile(path, false).close();
        return format.open(path);
    }

    private CardSource openImage(Path path, boolean change) throws IOException {
        if (change) {
            rules.checkImage(path);
        }
        RandomAccessFile file = openFile(path, change);
        try {
            long size = lockedSize(file, change);
            refuseEmpty(size, "Read the card into the image again.");
            return CardSource.of(
                    path,
                    CardSource.Kind.IMAGE,
                    new ChannelDevice(file.getChannel(), size, IMAGE_SECTOR, 1, !change, DiskHold.NONE));
        } catch (IOException | RuntimeException e) {
            file.close();
            throw e;
        }
    }

    /** A disk that is to be changed is held before it is opened, so that nothing can come between. */
    private CardSource openDevice(Path path, boolean change) throws IOException {
        DiskHold hold = DiskHold.NONE;
        if (change) {
            rules.checkDevice(path);
            hold = disks.hold(path);
        }
        try {
            RandomAccessFile file = openFile(path, change);
            try {
                long size = Math.max(lockedSize(file, change), disks.bytes(path));
                refuseEmpty(size, "Put a card in the reader, or take it out and put it back in.");
                Optional<DiskFacts> facts = disks.facts(path);
                int sector = facts.map(DiskFacts::logicalSector).orElse(DiskFacts.DEFAULT_SECTOR);
                int alignment = facts.map(DiskFacts::physicalSector).orElse(sector);
                return CardSource.of(
                        path,
                        CardSource.Kind.BLOCK_DEVICE,
                        new ChannelDevice(file.getChannel(), size, sector, alignment, !change, hold));
            } catch (IOException | RuntimeException e) {
                file.close();
                throw e;
            }
        } catch (IOException | RuntimeException e) {
            hold.close();
            throw e;
        }
    }

    /** The file's own length, not the channel's: on a raw disk only the former asks the driver. */
    private static long lockedSize(RandomAccessFile file, boolean change) throws IOException {
        if (change) {
            lock(file.getChannel());
        }
        return file.length();
    }

    private static void refuseEmpty(long size, String remedy) throws CardException {
        if (size == 0) {
            throw CardException.unreadable("it is empty", remedy);
        }
    }

    private static RandomAccessFile openFile(Path path, boolean change) throws CardException {
        if (!Files.isReadable(path)) {
            throw CardException.unreadable(
                    "you have no right to read it",
                    "Ask whoever runs this computer for the right to read it, or make an image of the card and use that.");
        }
        if (change && !Files.isWritable(path)) {
            throw CardException.refused(
                    "you have no right to write to it",
                    "Check the card's lock tab and the file's permissions, or work on a copy of the image.");
        }
        try {
            return new RandomAccessFile(path.toFile(), change ? "rw" : "r");
        } catch (IOException e) {
            throw CardException.unreadable(
                    "it could not be opened (" + e.getMessage() + ")",
                    "Check that the card sits firmly in its reader and that no other program holds it.",
                    e);
        }
    }

    private static void lock(FileChannel channel) throws IOException {
        FileLock lock;
        try {
            lock = channel.tryLock();
        } catch (OverlappingFileLockException e) {
            lock = null;
        } catch (IOException e) {
            throw CardException.refused(
                    "it could not be locked against other changes (" + e.getMessage() + ")",
                    "Copy the image to a disk of this computer and work on the copy.",
                    e);
        }
        if (lock == null) {
            throw CardException.refused("another bootmend is changing it", "Wait until it is done, then try again.");
        }
    }
}
