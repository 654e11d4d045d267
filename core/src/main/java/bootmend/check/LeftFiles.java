package bootmend.check;

import bootmend.tuning.DataFile;
import bootmend.tuning.DataRow;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The kinds of files that may be left on a boot partition, as the data file has them. */
final class LeftFiles {

    /** How many files are read. No source: a bound against hostile cards. */
    private static final int MOST_FILES = 64;

    private static final Map<String, Boolean> PLACES = Map.of("root", false, "any", true);

    private final List<LeftFile> kinds;

    private LeftFiles(List<LeftFile> kinds) {
        this.kinds = kinds;
    }

    /** @throws bootmend.tuning.DataFileException if the data file is damaged */
    static LeftFiles load() {
        return read(DataFile.resource(LeftFiles.class, "left-files.csv"));
    }

    static LeftFiles read(DataFile file) {
        return new LeftFiles(file.withColumns("name", "where", "rule", "what", "text", "source")
                .map(LeftFiles::kind, Function.identity()));
    }

    private static LeftFile kind(DataRow row) {
        String text = row.text("text");
        try {
            return new LeftFile(
                    Pattern.compile(Stream.of(row.required("name")
                                    .toLowerCase(Locale.ROOT)
                                    .split("\\*", -1))
                            .map(Pattern::quote)
                            .collect(Collectors.joining(".*"))),
                    row.choice("where", PLACES),
                    row.required("rule"),
                    row.required("what"),
                    text.isEmpty() ? Optional.empty() : Optional.of(Pattern.compile(text, Pattern.MULTILINE)));
        } catch (PatternSyntaxException e) {
            throw row.error("column text is no pattern: " + e.getMessage());
        }
    }

    List<LeftFile> kinds() {
        return kinds;
    }

    /** The paths of the files whose text tells more than their name, and of the file for a try-once start. */
    Set<String> wanted(CardFiles files) {
        Set<String> wanted = new TreeSet<>();
        files.file(TrialFileCheck.NAME).ifPresent(entry -> wanted.add(entry.path()));
        files.all().stream()
                .filter(entry -> !entry.folder()
                        && kinds.stream().anyMatch(kind -> kind.text().isPresent() && kind.fits(entry)))
                .limit(MOST_FILES)
                .forEach(entry -> wanted.add(entry.path()));
        return wanted;
    }
}
