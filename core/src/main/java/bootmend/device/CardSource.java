package bootmend.device;

import bootmend.CardException;
import de.waldheinz.fs.BlockDevice;
import java.io.Closeable;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * A card that is open: its device, what kind of thing it is, and, when it was opened for changing, an exclusive lock.
 *
 * <p>Opening refuses, each with its own words, what is missing, empty, a folder, not permitted, in use by the running
 * system, or being changed by another bootmend.
 */
public final class CardSource implements Closeable {

    /** What a card is to the computer it is in. */
    public enum Kind {
        IMAGE("image file"),
        PACKED_IMAGE("packed image file"),
        BLOCK_DEVICE("block device");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** An image does not say what sectors its card had; all tables but the rarest count in these. */
    private static final int IMAGE_SECTOR = 512;

    private final Path path;
    private final Kind kind;
    private final BlockDevice medium;
    private final BlockDevice device;

    private CardSource(Path path, Kind kind, BlockDevice device) {
        this(path, kind, device, device);
    }

    private CardSource(Path path, Kind kind, BlockDevice medium, BlockDevice device) {
        this.path = path;
        this.kind = kind;
        this.medium = medium;
        this.device = device;
    }

    /** Opens cards on this computer. */
    public static CardOpener onThisComputer() {
        return onThisComputer(FixedDisks.REFUSED);
    }

    /** Opens cards on this computer, and for a change also disks that do not look like a card, where that is allowed. */
    public static CardOpener onThisComputer(FixedDisks fixed) {
        SystemDisks disks = SystemDisks.ofThisComputer();
        return (path, forChanging) -> open(path, disks, fixed, forChanging);
    }

    /** Whether the file's name says that it is a packed image, which can be read but not changed. */
    public static boolean isPacked(Path file) {
        return PackedFormat.of(file).isPresent();
    }

    /** Refuses a card of which its name alone says that it cannot be changed. */
    public static void refuseToChange(Path file) throws CardException {
        Optional<PackedFormat> format = PackedFormat.of(file);
        if (format.isPresent()) {
            throw packed(file, format.get());
        }
    }

    /** A card on a device that is open already, under any name. */
    public static CardSource of(Path name, BlockDevice device) {
        return new CardSource(name, Kind.IMAGE, device);
    }

    static CardSource open(Path path, SystemDisks disks, FixedDisks fixed, boolean change)
            throws CardException, IOException {
        return switch (kindOf(path)) {
            case IMAGE -> openImage(path, disks, fixed, change);
            case PACKED_IMAGE -> openPacked(path, change);
            case BLOCK_DEVICE -> openDevice(path, disks, fixed, change);
        };
    }

    private static CardSource openImage(Path path, SystemDisks disks, FixedDisks fixed, boolean change)
            throws CardException, IOException {
        if (change) {
            new ChangeRules(disks, fixed).checkImage(path);
        }
        RandomAccessFile file = openFile(path, change);
        try {
            long size = lockedSize(file, change);
            refuseEmpty(size, Kind.IMAGE);
            return new CardSource(
                    path,
                    Kind.IMAGE,
                    new ChannelDevice(file.getChannel(), size, IMAGE_SECTOR, 1, !change, DiskHold.NONE));
        } catch (IOException | RuntimeException e) {
            file.close();
            throw e;
        }
    }

    /** A disk that is to be changed is held before it is opened, so that nothing can come between. */
    private static CardSource openDevice(Path path, SystemDisks disks, FixedDisks fixed, boolean change)
            throws CardException, IOException {
        DiskHold hold = DiskHold.NONE;
        if (change) {
            new ChangeRules(disks, fixed).checkDevice(path);
            hold = disks.hold(path);
        }
        try {
            RandomAccessFile file = openFile(path, change);
            try {
                long size = Math.max(lockedSize(file, change), disks.bytes(path));
                refuseEmpty(size, Kind.BLOCK_DEVICE);
                Optional<DiskFacts> facts = disks.facts(path);
                int sector = facts.map(DiskFacts::logicalSector).orElse(DiskFacts.DEFAULT_SECTOR);
                int alignment = facts.map(DiskFacts::physicalSector).orElse(sector);
                return new CardSource(
                        path,
                        Kind.BLOCK_DEVICE,
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
    private static long lockedSize(RandomAccessFile file, boolean change) throws CardException, IOException {
        if (change) {
            lock(file.getChannel());
        }
        return file.length();
    }

    private static void refuseEmpty(long size, Kind kind) throws CardException {
        if (size == 0) {
            throw CardException.unreadable("it is empty", emptyRemedy(kind));
        }
    }

    public Path path() {
        return path;
    }

    public Kind kind() {
        return kind;
    }

    public BlockDevice device() {
        return device;
    }

    /** Bytes of the card as it is named: of a packed image, those of its file. */
    public long bytes() throws IOException {
        return kind == Kind.PACKED_IMAGE ? Files.size(path) : device.getSize();
    }

    /** Whether the device's size is the card's; a packed image may be shorter than its device says. */
    public boolean hasKnownSize() {
        return !(medium instanceof PackedDevice packed) || packed.hasKnownSize();
    }

    /** The same card, reached through what {@code front} puts before its device. */
    CardSource behind(UnaryOperator<BlockDevice> front) {
        return new CardSource(path, kind, medium, front.apply(device));
    }

    @Override
    public void close() throws IOException {
        device.close();
    }

    private static CardException packed(Path path, PackedFormat format) {
        return CardException.refused(
                "it is a packed image, which can be read but not changed",
                "A change is made to the unpacked image.",
                format.unpacking(path));
    }

    private static CardSource openPacked(Path path, boolean change) throws CardException, IOException {
        PackedFormat format = PackedFormat.of(path).orElseThrow();
        if (change) {
            throw packed(path, format);
        }
        openFile(path, false).close();
        return new CardSource(path, Kind.PACKED_IMAGE, PackedDevice.open(path, format));
    }

    private static Kind kindOf(Path path) throws CardException {
        if (!Files.exists(path)) {
            throw CardException.unreadable(
                    "there is no such file or device", "Check the spelling, and that the card is in its reader.");
        }
        if (Files.isDirectory(path)) {
            throw CardException.unreadable(
                    "it is a folder, not a card image or a block device",
                    "Name the image file, or the reader's device.");
        }
        if (!Files.isRegularFile(path)) {
            return Kind.BLOCK_DEVICE;
        }
        return isPacked(path) ? Kind.PACKED_IMAGE : Kind.IMAGE;
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

    private static void lock(FileChannel channel) throws CardException, IOException {
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

    private static String emptyRemedy(Kind kind) {
        return kind != Kind.BLOCK_DEVICE
                ? "Read the card into the image again."
                : "Put a card in the reader, or take it out and put it back in.";
    }
}
