package bootmend.config;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Follows a config file as the board does: sections, and includes in place.
 *
 * <p>Sources: "Conditional filters", config_txt/conditional.adoc, commits 23cc7a36 and 3e67d54c; {@code include}:
 * "File format", config_txt/what_is_config_txt.adoc, commit 57ad5821. The latter says that the included text stands in
 * the line's place; taken at its word, filters in force hold inside it and those it opens hold after it. Where an
 * include line does not count, its file is not read, so no section in it can end the filter that keeps it out.
 */
public final class ConfigReader {

    /** How many include lines may lead to one another. No source: a bound against hostile cards. */
    public static final int MAX_DEPTH = 8;

    /** How many files may be included in all. No source: a bound against hostile cards. */
    public static final int MAX_INCLUDES = 64;

    /** How many bytes may be included in all. No source: a bound against hostile cards. */
    public static final int MAX_INCLUDED_BYTES = 1 << 20;

    private final IncludeSource includes;
    private final FilterParser parser;
    private final FilterFacts facts;

    private final List<ReachedLine> lines = new ArrayList<>();
    private final List<IncludeProblem> problems = new ArrayList<>();
    private final Deque<String> open = new ArrayDeque<>();
    private FilterState filters = FilterState.EMPTY;
    private int included;
    private long includedBytes;

    private ConfigReader(IncludeSource includes, FilterParser parser, FilterFacts facts) {
        this.includes = includes;
        this.parser = parser;
        this.facts = facts;
    }

    /** Reads {@code document}, named {@code file}, for one board. */
    public static ConfigReading read(
            String file, ConfigDocument document, IncludeSource includes, FilterParser parser, FilterFacts facts) {
        ConfigReader reader = new ConfigReader(includes, parser, facts);
        reader.read(file, document, Condition.HOLDS);
        return new ConfigReading(reader.lines, reader.problems);
    }

    private void read(String file, ConfigDocument document, Condition around) {
        open.push(sameName(file));
        Condition here = around.and(filters.on(facts));
        for (ConfigLine line : document.lines()) {
            if (line.kind() instanceof LineKind.Section section) {
                filters = filters.with(parser.parse(section.raw()));
                here = around.and(filters.on(facts));
            } else if (line.isLive()) {
                lines.add(new ReachedLine(file, line, here, filters.isNone()));
                if (line.kind() instanceof LineKind.Include include && here.truth() != Truth.FALSE) {
                    follow(include.file(), file, line.number(), here);
                    here = around.and(filters.on(facts));
                }
            }
        }
        open.pop();
    }

    private void follow(String name, String file, int line, Condition around) {
        if (open.contains(sameName(name))) {
            report(IncludeProblem.Kind.LOOP, file, line, name);
        } else if (open.size() > MAX_DEPTH) {
            report(IncludeProblem.Kind.TOO_DEEP, file, line, name);
        } else if (included == MAX_INCLUDES) {
            report(IncludeProblem.Kind.TOO_MUCH, file, line, name);
        } else {
            included++;
            Optional<byte[]> bytes = includes.read(name);
            if (bytes.isEmpty()) {
                report(IncludeProblem.Kind.MISSING, file, line, name);
            } else if (includedBytes + bytes.get().length > MAX_INCLUDED_BYTES) {
                report(IncludeProblem.Kind.TOO_MUCH, file, line, name);
            } else {
                includedBytes += bytes.get().length;
                include(name, ConfigDocument.parse(bytes.get()), around);
            }
        }
    }

    private void include(String name, ConfigDocument document, Condition around) {
        FilterState before = filters;
        read(name, document, around);
        if (around.truth() == Truth.UNKNOWN && !filters.equals(before)) {
            // The file's sections hold from here on only if it was read at all.
            filters = before.with(new Filter.Unknown("the sections in " + name + ", which is not always included"));
        }
    }

    private void report(IncludeProblem.Kind kind, String file, int line, String name) {
        problems.add(new IncludeProblem(kind, file, line, name));
    }

    /** Names on a FAT volume do not tell upper from lower case. */
    private static String sameName(String name) {
        String relative = name.startsWith("/") ? name.substring(1) : name;
        return relative.toLowerCase(Locale.ROOT);
    }
}
