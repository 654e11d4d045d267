package bootmend.card;

import bootmend.check.CardFiles;
import bootmend.fat.BootFiles;
import bootmend.fat.Directory;
import bootmend.fat.DirectoryEntry;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Everything that a volume's folders list, each folder once, within bounds that no boot partition comes near. */
public final class CardListing {

    /** No source: bounds against hostile cards. */
    private static final int MOST_ENTRIES = 65_536;

    private static final int MOST_DEPTH = 16;

    private final Map<String, DirectoryEntry> entries = new LinkedHashMap<>();
    private final Map<String, List<String>> warnings = new LinkedHashMap<>();
    private final Deque<Folder> waiting = new ArrayDeque<>();
    private final Set<Long> seen = new HashSet<>();

    private record Folder(String path, int depth, DirectoryEntry entry) {}

    private CardListing() {}

    public static CardListing of(BootFiles volume) throws IOException {
        CardListing listing = new CardListing();
        listing.add("", 0, volume.root());
        while (!listing.waiting.isEmpty()) {
            Folder folder = listing.waiting.poll();
            try {
                listing.add(folder.path() + "/", folder.depth(), volume.list(folder.entry()));
            } catch (IOException e) {
                // What one folder holds is not worth losing the rest of the check for.
                listing.warning(folder.path(), "the folder cannot be read (" + e.getMessage() + ")");
            }
        }
        return listing;
    }

    private void add(String prefix, int depth, Directory directory) {
        directory.warnings().forEach(warning -> warning(prefix, warning));
        for (DirectoryEntry entry : directory.entries()) {
            if (entries.size() >= MOST_ENTRIES) {
                warning("volume", "there are over " + MOST_ENTRIES + " files; the rest was not looked at");
                waiting.clear();
                return;
            }
            entries.putIfAbsent(prefix + entry.name(), entry);
            if (entry.folder() && depth < MOST_DEPTH && seen.add(entry.firstCluster())) {
                waiting.add(new Folder(prefix + entry.name(), depth + 1, entry));
            }
        }
    }

    private void warning(String folder, String warning) {
        warnings.computeIfAbsent(folder, none -> new ArrayList<>()).add(warning);
    }

    /** The entry at a path as {@link #entries} gives it. */
    public DirectoryEntry entry(String path) {
        return entries.get(path);
    }

    public List<CardFiles.Entry> entries() {
        return entries.entrySet().stream()
                .map(each -> new CardFiles.Entry(
                        each.getKey(),
                        each.getValue().shortName(),
                        each.getValue().folder(),
                        each.getValue().size()))
                .toList();
    }

    /** What is wrong with folders, in clauses, by the folder's path. */
    public Map<String, List<String>> warnings() {
        return warnings;
    }
}
