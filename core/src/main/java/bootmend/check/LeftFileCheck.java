package bootmend.check;

import bootmend.finding.Place;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Files that should not go out with a card: secrets, what sets a system up at its first start, and what desktop systems
 * leave behind. Names files, never what they hold.
 */
record LeftFileCheck(LeftFiles kinds) implements Check {

    private static final String DESKTOP = "desktop-leftovers";
    private static final String SECRET = "secret-on-card";
    private static final int MOST_NAMED = 5;

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        Set<String> desktop = new LinkedHashSet<>();
        Set<String> insideOf = new HashSet<>();
        for (CardFiles.Entry entry : card.files().all()) {
            if (insideOf.contains(entry.parent())) {
                insideOf.add(entry.path());
                continue;
            }
            Map<String, Set<String>> found = found(card, entry);
            if (found.containsKey(DESKTOP)) {
                desktop.add(entry.path());
                insideOf.add(entry.path());
            }
            heaviest(found)
                    .ifPresent(rule -> remarks.add(Remark.of(
                            rule,
                            Place.file(entry.path()),
                            entry.path() + " holds " + String.join(" and ", found.get(rule)) + ".")));
        }
        if (!desktop.isEmpty()) {
            String names = String.join(", ", desktop.stream().limit(MOST_NAMED).toList());
            int more = desktop.size() - MOST_NAMED;
            remarks.add(Remark.of(
                    DESKTOP,
                    Place.file(desktop.iterator().next()),
                    "Desktop systems left " + names + (more > 0 ? " and " + more + " more" : "") + "."));
        }
        return remarks;
    }

    /** A file with a secret is told about as that alone. */
    private static Optional<String> heaviest(Map<String, Set<String>> found) {
        return found.containsKey(SECRET)
                ? Optional.of(SECRET)
                : found.keySet().stream().filter(rule -> !rule.equals(DESKTOP)).findFirst();
    }

    /** For each rule that counts for a file, what the file holds by it. */
    private Map<String, Set<String>> found(CardContent card, CardFiles.Entry entry) {
        Map<String, Set<String>> found = new LinkedHashMap<>();
        FileText text = card.texts().get(entry.path());
        for (LeftFile kind : kinds.kinds()) {
            if (!kind.fits(entry)) {
                continue;
            }
            if (kind.text().isEmpty()) {
                found.computeIfAbsent(kind.rule(), none -> new LinkedHashSet<>())
                        .add(kind.what());
            } else if (text != null && !entry.folder()) {
                if (holds(kind.text().get(), text)) {
                    found.computeIfAbsent(kind.rule(), none -> new LinkedHashSet<>())
                            .add(kind.what());
                } else if (!text.whole() && kind.rule().equals(SECRET)) {
                    found.computeIfAbsent("secret-not-told", none -> new LinkedHashSet<>())
                            .add("more than was looked at, and may hold " + kind.what());
                }
            }
        }
        return found;
    }

    private static boolean holds(Pattern pattern, FileText text) {
        // A text in a wide encoding has a zero in every other byte.
        String plain = new String(text.bytes(), StandardCharsets.ISO_8859_1).replace("\0", "");
        return pattern.matcher(plain).find();
    }
}
