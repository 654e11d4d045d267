package bootmend.profile;

import bootmend.CardException;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.config.IncludeSource;
import bootmend.config.LineKind;
import bootmend.config.Truth;
import bootmend.tuning.Assignment;
import bootmend.tuning.Board;
import bootmend.tuning.StockReset;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.Effective;
import bootmend.tuning.resolve.LineEffect;
import bootmend.tuning.resolve.LineOutcome;
import bootmend.tuning.resolve.Resolution;
import bootmend.tuning.resolve.Resolver;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;

/**
 * Makes a card's tuning lines exactly a set of settings, for one board.
 *
 * <p>A setting goes where the board's last sure line with its key stands already; what has no line yet goes into the
 * board's own section, with {@code [all]} after it. Every other line that tunes this board is commented out. Lines for
 * other boards, and all that tunes nothing, stay byte for byte. Doing it twice changes nothing the second time.
 */
public final class ProfileEdit {

    private final TuningTables tables;
    private final Board board;
    private final UnaryOperator<String> pathOf;

    /** @param pathOf the path of the file that an include line names; one file may go by several names */
    public ProfileEdit(TuningTables tables, Board board, UnaryOperator<String> pathOf) {
        this.tables = tables;
        this.board = board;
        this.pathOf = pathOf;
    }

    /** Where a line stands; a file that is included twice has its lines reached twice. */
    private record Spot(String path, int line) {}

    /**
     * The config files after the change, by path, those that do not change among them.
     *
     * @param file the config file's path
     * @param includes where the files it includes come from
     * @param settings key to value, in the order in which new lines are written
     * @throws CardException when something on the card would make the result unsure
     */
    public Map<String, ConfigDocument> apply(
            String file, ConfigDocument document, IncludeSource includes, Map<String, String> settings)
            throws CardException {
        Map<String, ConfigDocument> files = new LinkedHashMap<>();
        files.put(file, document);
        Resolution now = resolve(file, document, name -> {
            Optional<byte[]> bytes = includes.read(name);
            bytes.ifPresent(content -> files.putIfAbsent(pathOf.apply(name), ConfigDocument.parse(content)));
            return bytes;
        });
        List<LineOutcome> ours =
                now.lines().stream().filter(line -> isOurs(line, settings)).toList();
        Map<String, LineOutcome> kept = kept(ours, settings);

        files.replaceAll((path, before) -> edit(path, before, ours, kept, settings));
        files.put(file, add(file, files.get(file), kept, settings));
        verify(file, files, includes, settings);
        return files;
    }

    private Resolution resolve(String file, ConfigDocument document, IncludeSource includes) {
        return new Resolver(tables).resolve(file, document, includes, BoardFacts.of(board));
    }

    /** Whether the line tunes this board, or may, and goes or is set. */
    private static boolean isOurs(LineOutcome line, Map<String, String> settings) {
        boolean elsewhere = line.effect() == LineEffect.OTHER_BOARD || line.effect() == LineEffect.NEVER_APPLIES;
        return !elsewhere
                && (line.key().resets() || settings.containsKey(line.key().key()));
    }

    /** For each setting the board's last sure line with its key. */
    private static Map<String, LineOutcome> kept(List<LineOutcome> ours, Map<String, String> settings) {
        Map<String, LineOutcome> kept = new LinkedHashMap<>();
        for (LineOutcome line : ours) {
            if (settings.containsKey(line.key().key())
                    && line.source().condition().truth() == Truth.TRUE) {
                kept.put(line.key().key(), line);
            }
        }
        return kept;
    }

    private ConfigDocument edit(
            String path,
            ConfigDocument document,
            List<LineOutcome> ours,
            Map<String, LineOutcome> kept,
            Map<String, String> settings) {
        Map<Spot, Set<String>> keptKeys = kept.values().stream()
                .collect(Collectors.groupingBy(
                        this::spot, Collectors.mapping(line -> line.key().key(), Collectors.toSet())));
        ConfigDocument edited = document;
        Map<Integer, Set<String>> out = new TreeMap<>();
        for (LineOutcome line : ours) {
            Spot spot = spot(line);
            if (!spot.path().equals(path)) {
                continue;
            }
            String key = line.key().key();
            if (keptKeys.getOrDefault(spot, Set.of()).contains(key)) {
                edited = edited.setValue(spot.line(), value(edited.line(spot.line()), key, settings.get(key)));
            } else {
                out.computeIfAbsent(spot.line(), none -> new TreeSet<>()).add(key);
            }
        }
        return StockReset.apply(edited, StockReset.of(edited, out), false);
    }

    private static String value(ConfigLine line, String key, String value) {
        return line.kind() instanceof LineKind.Setting setting ? Assignment.with(setting, key, value) : value;
    }

    private Spot spot(LineOutcome line) {
        return new Spot(pathOf.apply(line.source().file()), line.source().line().number());
    }

    /** Puts the settings that have no line yet into the board's own section. */
    private ConfigDocument add(
            String file, ConfigDocument document, Map<String, LineOutcome> kept, Map<String, String> settings) {
        List<String> lines = new ArrayList<>();
        settings.forEach((key, value) -> {
            if (!kept.containsKey(key)) {
                lines.add(key + "=" + value);
            }
        });
        if (lines.isEmpty()) {
            return document;
        }
        String section = "[" + board.id() + "]";
        Optional<Integer> last = kept.values().stream()
                .map(LineOutcome::source)
                .filter(source -> pathOf.apply(source.file()).equals(file))
                .map(source -> source.line())
                .filter(line -> line.section().filter(section::equals).isPresent())
                .map(line -> line.number())
                .max(Integer::compare);
        if (last.isPresent()) {
            return document.insertAfter(last.get(), lines);
        }
        lines.add(0, section);
        lines.add("[all]");
        return document.append(lines);
    }

    private static boolean counts(LineOutcome line) {
        return line.effect() != LineEffect.OTHER_BOARD && line.effect() != LineEffect.NEVER_APPLIES;
    }

    /** What was worked out must come out on the board, whatever else stands on the card. */
    private void verify(
            String file, Map<String, ConfigDocument> files, IncludeSource includes, Map<String, String> settings)
            throws CardException {
        Resolution after = resolve(
                file,
                files.get(file),
                name -> Optional.ofNullable(files.get(pathOf.apply(name)))
                        .map(ConfigDocument::toBytes)
                        .or(() -> includes.read(name)));
        for (Effective effective : after.effective()) {
            String key = effective.chosen().setBy();
            boolean resets = tables.vocabulary()
                    .findOnCard(key)
                    .map(known -> known.resets())
                    .orElse(false);
            // A key that only some revisions of the board read depends too, but not on anything the card holds.
            boolean sure = effective.chosen().source().condition().truth() == Truth.TRUE
                    && effective.otherwise().isEmpty();
            boolean wanted = effective.chosen().written().equals(settings.get(key)) && sure;
            if ((resets || settings.containsKey(key)) && !wanted) {
                throw CardException.refused(
                        "on " + board.id() + " " + key + " would not be sure (" + effective.file() + " line "
                                + effective.line() + ")",
                        "Look at the line and at the sections above it, put it right by hand, then try again.");
            }
        }
        for (String key : settings.keySet()) {
            if (after.lines().stream().noneMatch(line -> line.key().key().equals(key) && counts(line))) {
                throw CardException.refused(
                        "on " + board.id() + " " + key + " would not be read",
                        "Look at the sections at the end of " + file + ", put them right by hand, then try again.");
            }
        }
    }
}
