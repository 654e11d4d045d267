package bootmend.device;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/** The ways in which a card image is packed, told by the end of the file's name. */
enum PackedFormat {
    GZIP(".gz", "gzip -dk"),
    XZ(".xz", "xz -dk"),
    ZSTD(".zst", "zstd -d"),
    ZIP(".zip", "unzip");

    private final String suffix;
    private final String unpacker;

    PackedFormat(String suffix, String unpacker) {
        this.suffix = suffix;
        this.unpacker = unpacker;
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

    /** A command that unpacks such a file and keeps it. */
    String unpacker() {
        return unpacker;
    }
}
