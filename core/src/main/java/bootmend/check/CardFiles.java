package bootmend.check;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.StringJoiner;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The names of the files and folders on a boot partition; upper and lower case are one, as on every FAT volume. */
public final class CardFiles {

    /**
     * A file or folder.
     *
     * @param path from the root, parts separated by {@code /}
     * @param alias its 8.3 name, which finds it too
     * @param size bytes; 0 for a folder
     */
    public record Entry(String path, String alias, boolean folder, long size) {

        /** A file that has no other name. */
        public static Entry file(String path, long size) {
            return new Entry(path, path.substring(path.lastIndexOf('/') + 1), false, size);
        }

        String name() {
            return path.substring(path.lastIndexOf('/') + 1);
        }

        String parent() {
            return path.substring(0, Math.max(0, path.lastIndexOf('/')));
        }
    }

    private final List<Entry> entries;
    /** Of each entry, in the same order. */
    private final List<String> keys;

    private final Map<String, Entry> byPath = new HashMap<>();

    public CardFiles(List<Entry> entries) {
        this.entries = List.copyOf(entries);
        this.keys = entries.stream().map(entry -> key(entry.path())).toList();
        for (int i = 0; i < keys.size(); i++) {
            byPath.putIfAbsent(keys.get(i), entries.get(i));
        }
        entries.forEach(entry -> byPath.putIfAbsent(key(entry.parent() + "/" + entry.alias()), entry));
    }

    /** Everything, in the order it was listed. */
    public List<Entry> all() {
        return entries;
    }

    /** The file, no folder, at a path; a leading {@code /} does not matter. */
    public Optional<Entry> file(String path) {
        return Optional.ofNullable(byPath.get(key(path))).filter(entry -> !entry.folder());
    }

    boolean has(String path) {
        return file(path).isPresent();
    }

    /** The files in the root. */
    List<Entry> inRoot() {
        return entries.stream()
                .filter(entry -> !entry.folder() && entry.parent().isEmpty())
                .toList();
    }

    /** Whether a file in the root has a name that ends so; {@code ending} in lower case. */
    boolean hasInRoot(String ending) {
        for (int i = 0; i < keys.size(); i++) {
            if (keys.get(i).endsWith(ending)
                    && keys.get(i).indexOf('/') < 0
                    && !entries.get(i).folder()) {
                return true;
            }
        }
        return false;
    }

    /** The files whose path fits, {@code *} standing for any run of characters but {@code /}; sorted by path. */
    List<Entry> matching(String pattern) {
        if (!pattern.contains("*")) {
            return file(pattern).stream().toList();
        }
        Predicate<String> fits = fits(key(pattern));
        List<Entry> found = new ArrayList<>();
        for (int i = 0; i < keys.size(); i++) {
            if (!entries.get(i).folder() && fits.test(keys.get(i))) {
                found.add(entries.get(i));
            }
        }
        found.sort((one, other) -> one.path().compareTo(other.path()));
        return found;
    }

    private static Predicate<String> fits(String pattern) {
        int star = pattern.indexOf('*');
        if (star != pattern.lastIndexOf('*')) {
            return Pattern.compile(Stream.of(pattern.split("\\*", -1))
                            .map(Pattern::quote)
                            .collect(Collectors.joining("[^/]*")))
                    .asMatchPredicate();
        }
        String start = pattern.substring(0, star);
        String end = pattern.substring(star + 1);
        return key -> key.length() >= start.length() + end.length()
                && key.startsWith(start)
                && key.endsWith(end)
                && key.substring(start.length(), key.length() - end.length()).indexOf('/') < 0;
    }

    private static String key(String path) {
        StringJoiner parts = new StringJoiner("/");
        for (String part : path.split("/", -1)) {
            if (!part.isEmpty()) {
                parts.add(part);
            }
        }
        return parts.toString().toLowerCase(Locale.ROOT);
    }
}
