package bootmend.device;

import de.waldheinz.fs.BlockDevice;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.OptionalLong;
import java.util.function.BooleanSupplier;
import java.util.function.UnaryOperator;

/** A card that is open: its device, what kind of thing it is, and, when it was opened for changing, an exclusive lock. */
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

    private final Path path;
    private final Kind kind;
    private final BlockDevice device;
    private final OptionalLong packedBytes;
    private final BooleanSupplier sized;

    private CardSource(Path path, Kind kind, BlockDevice device, OptionalLong packedBytes, BooleanSupplier sized) {
        this.path = path;
        this.kind = kind;
        this.device = device;
        this.packedBytes = packedBytes;
        this.sized = sized;
    }

    /** A card on a device that is open already, under any name. */
    public static CardSource of(Path name, BlockDevice device) {
        return of(name, Kind.IMAGE, device);
    }

    /** A card of that kind on a device that is open already; closing the card closes it. */
    public static CardSource of(Path name, Kind kind, BlockDevice device) {
        return new CardSource(name, kind, device, OptionalLong.empty(), () -> true);
    }

    /**
     * A packed image that is unpacked as it is read.
     *
     * @param bytes of the packed file
     * @param sized whether the device's size is known by now
     */
    public static CardSource packed(Path file, BlockDevice unpacked, long bytes, BooleanSupplier sized) {
        return new CardSource(file, Kind.PACKED_IMAGE, unpacked, OptionalLong.of(bytes), sized);
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
        return packedBytes.isPresent() ? packedBytes.getAsLong() : device.getSize();
    }

    /** Whether the device's size is the card's; a packed image may be shorter than its device says. */
    public boolean hasKnownSize() {
        return sized.getAsBoolean();
    }

    /** The same card, reached through what {@code front} puts before its device. */
    CardSource behind(UnaryOperator<BlockDevice> front) {
        return new CardSource(path, kind, front.apply(device), packedBytes, sized);
    }

    @Override
    public void close() throws IOException {
        device.close();
    }
}
