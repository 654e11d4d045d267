package bootmend.device.packed;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.NextStep.UnpackImage.Packing;
import bootmend.device.CardSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/** The ways in which a card image is packed, told by the end of the file's name; a packed image is read, never changed. */
public enum PackedFormat {
    GZIP(".gz", Packing.GZIP),
    XZ(".xz", Packing.XZ),
    ZSTD(".zst", Packing.ZSTD),
    ZIP(".zip", Packing.ZIP);

    private final String suffix;
    private final Packing packing;

    PackedFormat(String suffix, Packing packing) {
        this.suffix = suffix;
        this.packing = packing;
    }

    /** The format that the name speaks of; none where it is not that of a packed image. */
    public static Optional<PackedFormat> of(Path file) {
        Path last = file.getFileName();
        String name = last == null ? "" : last.toString().toLowerCase(Locale.ROOT);
        for (PackedFormat format : values()) {
            if (name.endsWith(format.suffix)) {
                return Optional.of(format);
            }
        }
        return Optional.empty();
    }

    /** What a user can do with such a file. */
    NextStep.UnpackImage unpacking(Path file) {
        return new NextStep.UnpackImage(packing, file.getFileName().toString());
    }

    /**
     * Opens a packed image.
     *
     * @throws CardException of kind unreadable where the file is not packed as its name says, or damaged
     */
    public CardSource open(Path file) throws CardException, IOException {
        PackedDevice device = PackedDevice.open(file, this);
        return CardSource.packed(file, device, Files.size(file), device::hasKnownSize);
    }

    /** Why such a file cannot be changed, and what can. */
    public CardException notChanged(Path file) {
        return CardException.refused(
                "it is a packed image, which can be read but not changed",
                "A change is made to the unpacked image.",
                unpacking(file));
    }
}
