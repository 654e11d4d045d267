package bootmend.view;

import bootmend.card.CardListing;
import bootmend.fat.BootFiles;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileBytes;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** The files of a boot partition as they are held against another's. */
final class CompareFiles {

    /** How many bytes of each side are read in all. No source: more than any boot partition's files. */
    private static final long MOST_BYTES = 2L << 30;

    private static final int PIECE = 1 << 20;

    private final BootFiles files;
    private final Map<String, DirectoryEntry> entries = new TreeMap<>();

    private CompareFiles(BootFiles files) {
        this.files = files;
    }

    static CompareFiles of(BootFiles files) throws IOException {
        CompareFiles listed = new CompareFiles(files);
        CardListing listing = CardListing.of(files);
        listing.entries().stream()
                .filter(entry -> !entry.folder())
                .forEach(entry -> listed.entries.put(entry.path(), listing.entry(entry.path())));
        return listed;
    }

    /**
     * The files that one of both has and the other has not, or has with other content.
     *
     * @param but paths that are left out
     */
    List<CompareView.OfFile> differences(CompareFiles other, Set<String> but) throws IOException {
        Map<String, DirectoryEntry> mine = byName(this);
        Map<String, DirectoryEntry> theirs = byName(other);
        Set<String> names = new TreeSet<>(mine.keySet());
        names.addAll(theirs.keySet());
        names.removeAll(but.stream().map(CompareFiles::name).collect(Collectors.toSet()));
        List<CompareView.OfFile> found = new ArrayList<>();
        long left = MOST_BYTES;
        for (String name : names) {
            Optional<DirectoryEntry> a = Optional.ofNullable(mine.get(name));
            Optional<DirectoryEntry> b = Optional.ofNullable(theirs.get(name));
            boolean same =
                    a.isPresent() && b.isPresent() && a.get().size() == b.get().size();
            if (same) {
                left -= a.get().size();
                same = left < 0 || sameContent(files.bytes(a.get()), other.files.bytes(b.get()));
            }
            if (!same) {
                found.add(new CompareView.OfFile(name, a.map(DirectoryEntry::size), b.map(DirectoryEntry::size)));
            }
        }
        return found;
    }

    private static Map<String, DirectoryEntry> byName(CompareFiles listed) {
        Map<String, DirectoryEntry> byName = new TreeMap<>();
        listed.entries.forEach((path, entry) -> byName.putIfAbsent(name(path), entry));
        return byName;
    }

    /** FAT does not tell the case of letters apart. */
    private static String name(String path) {
        return path.toLowerCase(Locale.ROOT);
    }

    private static boolean sameContent(FileBytes a, FileBytes b) throws IOException {
        for (long at = 0; at < a.size(); at += PIECE) {
            byte[] left = a.read(at, PIECE);
            if (!Arrays.equals(left, b.read(at, PIECE))) {
                return false;
            }
            if (left.length < Math.min(PIECE, a.size() - at)) {
                return false;
            }
        }
        return true;
    }
}
