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

    /** Looks up what a name leads to now, without opening it. */
    @FunctionalInterface
    public interface Identification {
        CardIdentity now() throws IOException;
    }

    private final CardName name;
    private final Kind kind;
    private final BlockDevice device;
    private final OptionalLong packedBytes;
    private final BooleanSupplier sized;
    private final CardIdentity identity;
    private final Identification identification;
    private final String key;

    private CardSource(
            CardName name,
            Kind kind,
            BlockDevice device,
            OptionalLong packedBytes,
            BooleanSupplier sized,
            CardIdentity identity,
            Identification identification,
            String key) {
        this.name = name;
        this.kind = kind;
        this.device = device;
        this.packedBytes = packedBytes;
        this.sized = sized;
        this.identity = identity;
        this.identification = identification;
        this.key = key;
    }

    /** A card on a device that is open already, under any name. */
    public static CardSource of(CardName name, BlockDevice device) {
        return of(name, Kind.IMAGE, device);
    }

    /** A card of that kind on a device that is open already; closing the card closes it. */
    public static CardSource of(CardName name, Kind kind, BlockDevice device) {
        CardIdentity named = CardIdentity.named(name.absolute());
        return new CardSource(name, kind, device, OptionalLong.empty(), () -> true, named, () -> named, "");
    }

    /** The same card, known by {@code identity}, which was taken when it was opened. */
    public CardSource identifiedBy(CardIdentity taken, Identification again) {
        return new CardSource(name, kind, device, packedBytes, sized, taken, again, key);
    }

    /**
     * A packed image that is unpacked as it is read.
     *
     * @param bytes of the packed file
     * @param sized whether the device's size is known by now
     */
    public static CardSource packed(Path file, BlockDevice unpacked, long bytes, BooleanSupplier sized) {
        CardName name = new CardName.FileName(file);
        CardIdentity named = CardIdentity.named(name.absolute());
        return new CardSource(name, Kind.PACKED_IMAGE, unpacked, OptionalLong.of(bytes), sized, named, () -> named, "");
    }

    public CardName name() {
        return name;
    }

    /** The same card, of a medium with that key. */
    public CardSource keyed(String mediumKey) {
        return new CardSource(name, kind, device, packedBytes, sized, identity, identification, mediumKey);
    }

    /** What the system tells of this medium and of no other at the same time; empty where it tells nothing. */
    public String key() {
        return key;
    }

    /** By what the card was known when it was opened, and, for a change, locked. */
    public CardIdentity identity() {
        return identity;
    }

    /**
     * Whether the name still leads to the card that is open: false after another file took an image's name, or another
     * medium a card's place. To be asked before the first write and after the last.
     *
     * @throws IOException where the name leads nowhere any more, or that cannot be told
     */
    public boolean isStillNamed() throws IOException {
        return identity.isStill(identification.now());
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
        return new CardSource(name, kind, front.apply(device), packedBytes, sized, identity, identification, key);
    }

    @Override
    public void close() throws IOException {
        device.close();
    }
}
