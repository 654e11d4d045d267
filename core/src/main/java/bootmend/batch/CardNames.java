package bootmend.batch;

import bootmend.CardException;
import bootmend.device.CardName;
import bootmend.device.FileType;
import bootmend.device.packed.PackedFormat;
import bootmend.folder.MountedFolder;
import java.io.File;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.PatternSyntaxException;

/**
 * Turns what a user names into cards: files and devices as they are, a folder's image files, and patterns such as
 * {@code lab-*.img} where the shell left them as they were.
 *
 * <p>A folder that holds a config file is a boot partition that the system mounted, and one without an image is left for
 * whoever opens it to say so. A folder's or a pattern's files come in the order of their names, and a card that is named
 * twice, by whatever names, comes once: one card must never be open twice, because on some systems closing one of the
 * two gives up the lock of the other.
 */
public final class CardNames {

    private static final List<String> IMAGES = List.of(".img", ".bin", ".raw");
    private static final String WILD = "*?[{";

    private final boolean packed;

    /** @param packed whether packed images that a folder or a pattern gives count too, as for jobs that only read */
    public CardNames(boolean packed) {
        this.packed = packed;
    }

    /**
     * The cards, in the order named, and what was left out of folders and patterns.
     *
     * @throws CardException of kind usage where a pattern fits no file or a name is none on this system
     */
    public NamedCards expand(List<String> names) throws CardException {
        Map<Object, Path> cards = new LinkedHashMap<>();
        Map<Path, LeftOut> leftOut = new HashMap<>();
        for (String name : names) {
            for (Path card : expand(name, leftOut)) {
                cards.putIfAbsent(identity(card), card);
            }
        }
        return new NamedCards(List.copyOf(cards.values()), counted(leftOut));
    }

    private static Map<LeftOut, Integer> counted(Map<Path, LeftOut> leftOut) {
        Map<LeftOut, Integer> counts = new EnumMap<>(LeftOut.class);
        leftOut.values().forEach(why -> counts.merge(why, 1, Integer::sum));
        return counts;
    }

    /**
     * Refuses a card of which its name alone says that it can be read but not changed, for whoever works a change out on
     * cards that are only read.
     */
    public static void refuseToChange(Path card) throws CardException {
        Optional<PackedFormat> format = PackedFormat.of(card);
        if (format.isPresent()) {
            throw format.get().notChanged(card);
        }
    }

    private List<Path> expand(String name, Map<Path, LeftOut> leftOut) throws CardException {
        if (name.isBlank()) {
            CardName.of(name);
        }
        try {
            int wild = firstWild(name);
            if (wild >= 0 && !exists(name)) {
                return pattern(name, wild, leftOut);
            }
            Path path = Path.of(name);
            if (!Files.isDirectory(path)) {
                return List.of(path);
            }
            List<Path> images = MountedFolder.isBootFolder(path)
                    ? List.of()
                    : files(
                            path,
                            "*",
                            leftOut,
                            file -> isNamedImage(file) || PackedFormat.of(file).isPresent());
            return images.isEmpty() ? List.of(path) : images;
        } catch (InvalidPathException e) {
            throw CardException.usage(
                    name + " is no name of a file here (" + e.getReason() + ")", "Check the spelling.");
        } catch (IOException e) {
            throw CardException.unreadable(
                    name + " could not be listed (" + e.getMessage() + ")",
                    "Check that you have the right to read that folder.",
                    e);
        }
    }

    private static boolean exists(String name) {
        try {
            return Files.exists(Path.of(name));
        } catch (InvalidPathException e) {
            return false;
        }
    }

    private static int firstWild(String name) {
        for (int i = 0; i < name.length(); i++) {
            if (WILD.indexOf(name.charAt(i)) >= 0) {
                return i;
            }
        }
        return -1;
    }

    private List<Path> pattern(String name, int wild, Map<Path, LeftOut> leftOut) throws CardException, IOException {
        int end = Math.max(name.lastIndexOf('/'), name.lastIndexOf(File.separatorChar)) + 1;
        if (wild < end) {
            throw CardException.usage(name + " has a pattern in a folder's name", "Name the folder plainly.");
        }
        Path folder = Path.of(end == 0 ? "." : name.substring(0, end));
        Map<Path, LeftOut> out = new HashMap<>();
        List<Path> found =
                Files.isDirectory(folder) ? files(folder, name.substring(end), out, file -> true) : List.of();
        if (found.isEmpty()) {
            String note = new NamedCards(List.of(), counted(out))
                    .note()
                    .map(" "::concat)
                    .orElse("");
            throw CardException.usage("no file fits " + name, "Check the folder and the pattern." + note);
        }
        leftOut.putAll(out);
        return end == 0 ? found.stream().map(Path::getFileName).toList() : found;
    }

    /** @param meant whether a name is one that is asked for; a file of another name is passed over without a word */
    private List<Path> files(Path folder, String pattern, Map<Path, LeftOut> leftOut, Predicate<Path> meant)
            throws CardException, IOException {
        List<Path> found = new ArrayList<>();
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, pattern)) {
            for (Path file : files) {
                if (meant.test(file)) {
                    Optional<LeftOut> why = whyNot(file);
                    if (why.isPresent()) {
                        leftOut.put(file.toAbsolutePath().normalize(), why.get());
                    } else {
                        found.add(file);
                    }
                }
            }
        } catch (PatternSyntaxException e) {
            throw CardException.usage(pattern + " is no pattern (" + e.getDescription() + ")", "Check its brackets.");
        }
        found.sort(null);
        return found;
    }

    private Optional<LeftOut> whyNot(Path file) {
        if (file.getFileName().toString().startsWith("._")) {
            return Optional.of(LeftOut.DESKTOP);
        }
        FileType type = FileType.of(file);
        if (!type.isImageOrDisk()) {
            return Optional.of(LeftOut.of(type));
        }
        return !packed && PackedFormat.of(file).isPresent() ? Optional.of(LeftOut.PACKED) : Optional.empty();
    }

    private static boolean isNamedImage(Path file) {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        return IMAGES.stream().anyMatch(name::endsWith);
    }

    /** The same for every name of one file or device. */
    private static Object identity(Path card) {
        try {
            Object key = Files.readAttributes(card, BasicFileAttributes.class).fileKey();
            return key == null ? card.toRealPath() : key;
        } catch (IOException e) {
            return card.toAbsolutePath().normalize();
        }
    }
}
