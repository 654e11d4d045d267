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

    /** @param packed whether packed images in folders count too, as for jobs that only read */
    public CardNames(boolean packed) {
        this.packed = packed;
    }

    /**
     * The cards, in the order named.
     *
     * @throws CardException of kind usage where a pattern fits no file or a name is none on this system
     */
    public List<Path> expand(List<String> names) throws CardException {
        Map<Object, Path> cards = new LinkedHashMap<>();
        for (String name : names) {
            for (Path card : expand(name)) {
                cards.putIfAbsent(identity(card), card);
            }
        }
        return List.copyOf(cards.values());
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

    private List<Path> expand(String name) throws CardException {
        if (name.isBlank()) {
            CardName.of(name);
        }
        try {
            int wild = firstWild(name);
            if (wild >= 0 && !exists(name)) {
                return pattern(name, wild);
            }
            Path path = Path.of(name);
            if (!Files.isDirectory(path)) {
                return List.of(path);
            }
            List<Path> images = MountedFolder.isBootFolder(path) ? List.of() : files(path, "*", this::isImage);
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

    private static List<Path> pattern(String name, int wild) throws CardException, IOException {
        int end = Math.max(name.lastIndexOf('/'), name.lastIndexOf(File.separatorChar)) + 1;
        if (wild < end) {
            throw CardException.usage(name + " has a pattern in a folder's name", "Name the folder plainly.");
        }
        Path folder = Path.of(end == 0 ? "." : name.substring(0, end));
        List<Path> found =
                Files.isDirectory(folder) ? files(folder, name.substring(end), CardNames::mayBeACard) : List.of();
        if (found.isEmpty()) {
            throw CardException.usage("no file fits " + name, "Check the folder and the pattern.");
        }
        return end == 0 ? found.stream().map(Path::getFileName).toList() : found;
    }

    private static List<Path> files(Path folder, String pattern, Predicate<Path> wanted)
            throws CardException, IOException {
        List<Path> found = new ArrayList<>();
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, pattern)) {
            for (Path file : files) {
                if (wanted.test(file)) {
                    found.add(file);
                }
            }
        } catch (PatternSyntaxException e) {
            throw CardException.usage(pattern + " is no pattern (" + e.getDescription() + ")", "Check its brackets.");
        }
        found.sort(null);
        return found;
    }

    private boolean isImage(Path file) {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        return mayBeACard(file)
                && Files.isRegularFile(file)
                && (IMAGES.stream().anyMatch(name::endsWith)
                        || packed && PackedFormat.of(file).isPresent());
    }

    /** Beside each file, some desktop systems leave one with its attributes on disks that cannot keep them. Common practice. */
    private static boolean mayBeACard(Path file) {
        return FileType.of(file).isImageOrDisk()
                && !file.getFileName().toString().startsWith("._");
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
