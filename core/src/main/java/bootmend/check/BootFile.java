package bootmend.check;

import bootmend.finding.Place;
import java.util.List;
import java.util.Optional;

/**
 * A file that a board needs from the card to start.
 *
 * @param kind what it is for
 * @param paths paths of which one at least must be there, {@code *} standing for any run of characters
 * @param namedAt the line of the config file that names it; empty for a board's own default
 */
record BootFile(Kind kind, List<String> paths, Optional<Place> namedAt) {

    /** What a boot file is for, and the rule for its absence. */
    enum Kind {
        FIRMWARE("firmware-missing"),
        FIXUP("firmware-missing"),
        BOOTCODE("bootcode-missing"),
        KERNEL("kernel-missing"),
        DEVICE_TREE("device-tree-missing"),
        OVERLAY("overlay-missing"),
        INITRAMFS("initramfs-missing"),
        COMMAND_LINE("cmdline-missing");

        private final String ruleWhenMissing;

        Kind(String ruleWhenMissing) {
            this.ruleWhenMissing = ruleWhenMissing;
        }

        String ruleWhenMissing() {
            return ruleWhenMissing;
        }
    }

    BootFile {
        paths = List.copyOf(paths);
    }

    static BootFile usual(Kind kind, List<String> paths) {
        return new BootFile(kind, paths, Optional.empty());
    }

    static BootFile named(Kind kind, String path, Place by) {
        return new BootFile(kind, List.of(path), Optional.of(by));
    }

    boolean isUsual() {
        return namedAt.isEmpty();
    }

    /** Those files on the card that stand for it: all that fit a pattern, else the first that is there. */
    List<CardFiles.Entry> on(CardFiles files) {
        if (paths.stream().anyMatch(path -> path.contains("*"))) {
            return paths.stream().flatMap(path -> files.matching(path).stream()).toList();
        }
        return paths.stream()
                .flatMap(path -> files.file(path).stream())
                .limit(1)
                .toList();
    }

    boolean isMissing(CardFiles files) {
        return on(files).isEmpty();
    }
}
