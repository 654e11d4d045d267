package bootmend.boot;

import bootmend.config.VisibleText;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileContent;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which update of the boot memory waits on the card, and what the board does about it at its next start.
 *
 * <p>Sources: boot-eeprom.adoc, commit 01d01d3f; eeprom-bootloader.adoc, commit 0456a78c (update without the program);
 * release notes of firmware-2712, entry 2023-09-13 (a program for the other chip is passed over), commit 86759b04; sizes
 * of images and lines of the digest: the update and digest scripts of that repository. That the modules without card slot
 * may pass it over: the same page's heading.
 */
final class WaitingUpdateCheck {

    private static final Map<Long, String> CHIP_BY_SIZE = Map.of(524_288L, "BCM2711", 2_097_152L, "BCM2712");
    private static final Pattern TARGET = Pattern.compile("target-soc: *(\\d{4})");
    private static final Pattern DIGEST = Pattern.compile("\\A\\s*([0-9a-fA-F]{64})\\b");
    private static final int MOST_DIGEST = 16 << 10;
    private static final List<String> PERHAPS_PASSED_OVER = List.of("cm4", "cm4s", "cm5");

    private final BootFolder folder;
    private final BootTables tables;

    WaitingUpdateCheck(BootFolder folder, BootTables tables) {
        this.folder = folder;
        this.tables = tables;
    }

    /** @param chip the board's chip number */
    ChainPart on(String board, String chip, boolean hasBootMemory) throws IOException {
        List<Found> there = there();
        if (there.isEmpty() || !hasBootMemory) {
            return ChainPart.whole(Found.words(
                    "root folder",
                    there.isEmpty()
                            ? "no update of the boot memory waits"
                            : "update files that this board does not look for"));
        }
        Optional<DirectoryEntry> runs = find(UpdateFile.Role.RUNS);
        Optional<DirectoryEntry> renamed = find(UpdateFile.Role.RENAMED);
        Optional<DirectoryEntry> kept = find(UpdateFile.Role.KEPT);
        Optional<DirectoryEntry> digest = find(UpdateFile.Role.DIGEST);
        Optional<DirectoryEntry> image = renamed.or(() -> kept);
        Optional<String> target = target(image, digest);
        List<ChainPart> parts = new ArrayList<>();
        parts.add(ChainPart.whole(there));
        if (image.isPresent() && target.isPresent() && !target.get().equals(chip)) {
            parts.add(ChainPart.whole(
                    Found.words(image.get().name(), "is for " + target.get() + ", so this board passes it over")));
        } else if (runs.isPresent() && renamed.isPresent() && kept.isPresent()) {
            parts.add(ChainPart.unknown("images of both names wait, and which of them wins is not published"));
        } else if (runs.isPresent() && kept.isPresent()) {
            parts.add(rescue(board, kept.get(), runs.get(), digest));
        } else if (runs.isPresent() && renamed.isPresent()) {
            parts.add(waiting(renamed.get(), digest));
        } else if (runs.isPresent()) {
            parts.add(ChainPart.whole(Found.words(
                    runs.get().name(), "with no image to write it renames itself, and the board starts again")));
        } else if (renamed.isPresent()) {
            parts.add(
                    digest.isPresent()
                            ? selfUpdate(renamed.get(), digest.get())
                            : ChainPart.lacking(
                                    LinkState.MISSING,
                                    name(renamed.get()) + " waits without " + nameOf(UpdateFile.Role.DIGEST)
                                            + ", so no board takes it"));
        }
        return ChainPart.all(parts);
    }

    private List<Found> there() throws IOException {
        List<Found> there = new ArrayList<>();
        for (UpdateFile file : tables.updates()) {
            Optional<DirectoryEntry> entry = folder.file(file.name());
            if (entry.isPresent()) {
                String version = folder.version(file.name())
                        .map(found -> "waits; " + found.words())
                        .orElse("waits");
                there.add(Found.file(entry.get().name(), entry.get().size(), version));
            }
        }
        return there;
    }

    private Optional<DirectoryEntry> find(UpdateFile.Role role) throws IOException {
        return folder.file(nameOf(role));
    }

    private String nameOf(UpdateFile.Role role) {
        return tables.updates().stream()
                .filter(file -> file.role() == role)
                .findFirst()
                .orElseThrow()
                .name();
    }

    private static String name(DirectoryEntry entry) {
        return VisibleText.of(entry.name());
    }

    /** Which chip the image is for; empty where neither its digest nor its size tells. */
    private Optional<String> target(Optional<DirectoryEntry> image, Optional<DirectoryEntry> digest)
            throws IOException {
        if (digest.isPresent()) {
            Matcher matcher = TARGET.matcher(text(digest.get()));
            if (matcher.find()) {
                return Optional.of("BCM" + matcher.group(1));
            }
        }
        return image.map(entry -> CHIP_BY_SIZE.get(entry.size()));
    }

    private String text(DirectoryEntry entry) throws IOException {
        return new String(folder.read(entry, MOST_DIGEST).bytes(), StandardCharsets.ISO_8859_1);
    }

    private ChainPart rescue(String board, DirectoryEntry kept, DirectoryEntry runs, Optional<DirectoryEntry> digest) {
        if (PERHAPS_PASSED_OVER.contains(board)) {
            return ChainPart.unknown("a rescue card halts the board after writing its boot memory, and whether " + board
                    + " takes it hangs on how it is fitted");
        }
        List<String> files = new ArrayList<>(List.of(runs.name(), kept.name()));
        digest.ifPresent(each -> files.add(each.name()));
        return ChainPart.stops(
                LinkState.WHOLE,
                new Cause(
                        LinkKind.UPDATE,
                        "This is a rescue card: at every start the board runs " + name(runs) + ", writes " + name(kept)
                                + " into its boot memory and halts.",
                        Origin.ON_PURPOSE,
                        new Remedy.RemoveFiles(files)),
                Found.file(runs.name(), runs.size(), "runs before anything else"));
    }

    private ChainPart waiting(DirectoryEntry image, Optional<DirectoryEntry> digest) throws IOException {
        if (digest.isEmpty()) {
            return ChainPart.unknown(name(image) + " waits without " + nameOf(UpdateFile.Role.DIGEST)
                    + ", and how the update then fails is not published");
        }
        Optional<String> problem = problem(image, digest.get());
        return problem.isPresent()
                ? ChainPart.unknown(problem.get() + ", and how the update then fails is not published")
                : ChainPart.whole(Found.words(
                        image.name(),
                        "the board writes it into its boot memory at its next start, then starts again as usual"));
    }

    private ChainPart selfUpdate(DirectoryEntry image, DirectoryEntry digest) throws IOException {
        Optional<String> problem = problem(image, digest);
        return problem.isPresent()
                ? ChainPart.lacking(LinkState.DAMAGED, problem.get() + ", so the board should not take it")
                : ChainPart.whole(Found.words(
                        image.name(),
                        "boot firmware from 2022 on writes it by itself at the next start, if it differs"));
    }

    /** What does not fit between an image and its digest, which guards against damage. */
    private Optional<String> problem(DirectoryEntry image, DirectoryEntry digest) throws IOException {
        if (!CHIP_BY_SIZE.containsKey(image.size())) {
            return Optional.of(name(image) + " has " + image.size() + " bytes, which no image of a boot memory has");
        }
        Matcher wanted = DIGEST.matcher(text(digest));
        if (!wanted.find()) {
            return Optional.of(name(digest) + " does not begin with a digest");
        }
        if (folder.depth() != Depth.CONTENTS) {
            return Optional.empty();
        }
        FileContent content = folder.read(image, (int) image.size());
        try {
            String own = HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(content.bytes()));
            return own.equals(wanted.group(1).toLowerCase(Locale.ROOT))
                    ? Optional.empty()
                    : Optional.of(name(image) + " does not fit the digest in " + name(digest));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
