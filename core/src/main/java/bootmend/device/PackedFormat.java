package bootmend.device;

import bootmend.NextStep;
import bootmend.NextStep.UnpackImage.Packing;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/** The ways in which a card image is packed, told by the end of the file's name. */
enum PackedFormat {
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

    static Optional<PackedFormat> of(Path file) {
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
}
