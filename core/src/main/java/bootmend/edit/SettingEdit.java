package bootmend.edit;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.config.Condition;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigReading;
import bootmend.config.Filter;
import bootmend.config.FilterParser;
import bootmend.config.IncludeSource;
import bootmend.config.LineKind;
import bootmend.config.ReachedLine;
import bootmend.config.SectionRuns;
import bootmend.config.Truth;
import bootmend.config.VisibleText;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.Resolver;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;

/**
 * Gives single settings their values in config files, for the boards that a card is for.
 *
 * <p>Where a line gives the setting its value on every one of these boards, the value's bytes alone change. Where none of
 * them has such a line, one is added: in the section that is asked for, in that of the one board that is, else where every
 * board reads it. What would come out differently on some of the boards, or hangs on something unknown, is refused.
 */
public final class SettingEdit {

    private static final Filter ALL = new Filter.All();

    private final TuningTables tables;
    private final Resolver resolver;
    private final FilterParser parser;
    private final List<Board> boards;
    private final Filter own;
    private final UnaryOperator<String> pathOf;

    private SettingEdit(TuningTables tables, List<Board> boards, Filter own, UnaryOperator<String> pathOf) {
        this.tables = tables;
        this.resolver = new Resolver(tables);
        this.parser = new FilterParser(tables.boards().models());
        this.boards = List.copyOf(boards);
        this.own = own;
        this.pathOf = pathOf;
    }

    /**
     * For one board, with new lines in its own section.
     *
     * @param pathOf the path of the file that an include line names; one file may go by several names
     */
    public static SettingEdit forBoard(TuningTables tables, Board board, UnaryOperator<String> pathOf) {
        return new SettingEdit(tables, List.of(board), new Filter.Model(board.id()), pathOf);
    }

    /** For every board that a card can be meant for, with new lines where every board reads them. */
    public static SettingEdit forBoards(TuningTables tables, List<Board> boards, UnaryOperator<String> pathOf) {
        return new SettingEdit(tables, boards, ALL, pathOf);
    }

    /** A text of the card at one time, by path; the config file is the first. */
    private record Files(String main, Map<String, ConfigDocument> documents) {

        ConfigDocument document() {
            return documents.get(main);
        }

        Files with(String path, ConfigDocument changed) {
            Map<String, ConfigDocument> others = new LinkedHashMap<>(documents);
            others.put(path, changed);
            return new Files(main, others);
        }
    }

    /** Where new lines go: the document with them, and the number of the one that counts. */
    private record Placed(ConfigDocument document, int line) {}

    /**
     * The config files after the change, by path, those that do not change among them.
     *
     * @param main the config file's path
     * @param documents the config file and those that it includes, by path
     * @param section the section line under which lines are set or added, such as {@code [pi4]}; empty leaves it to the
     *     boards
     * @throws CardException where the result would not be sure
     */
    public Map<String, ConfigDocument> apply(
            String main, Map<String, ConfigDocument> documents, List<WantedSetting> wanted, Optional<Filter> section)
            throws CardException {
        Files files = new Files(main, documents);
        for (WantedSetting each : wanted) {
            try {
                files = section.isPresent() ? under(files, each, section.get()) : onBoards(files, each);
            } catch (IllegalArgumentException e) {
                throw CardException.refused(VisibleText.of(each.line()) + " cannot be written", e.getMessage(), e);
            }
        }
        return files.documents();
    }

    /** A section as a user names it, with or without its brackets. */
    public static Filter section(TuningTables tables, String text) throws CardException {
        String raw = text.startsWith("[") ? text : "[" + text + "]";
        Filter filter = new FilterParser(tables.boards().models()).parse(raw);
        if (filter instanceof Filter.Unknown) {
            throw CardException.usage(
                    VisibleText.of(raw) + " is no section that a board knows",
                    "Write it as in the config file, such as all, pi4, gpio4=1 or tryboot.");
        }
        return filter;
    }

    private Files onBoards(Files files, WantedSetting wanted) throws CardException {
        Optional<LineName.Spot> spot = sharedSpot(files, wanted);
        Files changed = spot.isPresent() ? set(files, wanted, spot.get()) : add(files, wanted, own);
        for (Board board : boards) {
            Optional<ReachedLine> last = last(lines(changed, wanted, board));
            boolean right =
                    last.isPresent() && last.get().condition().truth() == Truth.TRUE && gives(last.get(), wanted);
            if (!right) {
                throw notSure(wanted, board, last);
            }
        }
        return changed;
    }

    /** The line that gives the value on every board; nothing where no line does on any. */
    private Optional<LineName.Spot> sharedSpot(Files files, WantedSetting wanted) throws CardException {
        Set<Optional<LineName.Spot>> spots = new LinkedHashSet<>();
        for (Board board : boards) {
            List<ReachedLine> lines = lines(files, wanted, board);
            Optional<ReachedLine> last = last(lines);
            if (last.isPresent() && last.get().condition().truth() != Truth.TRUE) {
                throw notSure(wanted, board, last);
            }
            if (wanted.addsUp() && lines.stream().map(this::spot).distinct().count() > 1) {
                throw CardException.refused(
                        "several lines are about " + VisibleText.of(wanted.subject()) + " on " + board.id(),
                        "They count beside each other. Comment all but one of them out first.",
                        NextStep.Plain.SHOW_CARD);
            }
            spots.add(last.map(this::spot));
        }
        if (spots.size() > 1) {
            throw CardException.refused(
                    "the boards that this card can be meant for do not read " + VisibleText.of(wanted.subject())
                            + " from the same line",
                    "Name the section that is meant, or the board.",
                    NextStep.Plain.GIVE_BOARD);
        }
        return spots.stream().findFirst().flatMap(spot -> spot);
    }

    private CardException notSure(WantedSetting wanted, Board board, Optional<ReachedLine> last) {
        String where = last.map(line -> " (" + VisibleText.of(line.file()) + " line "
                        + line.line().number() + ")")
                .orElse("");
        return CardException.refused(
                "on " + board.id() + " " + VisibleText.of(wanted.subject()) + " would not be sure" + where,
                "Name the section that is meant, or look at the line and at the sections above it, and put them right "
                        + "by hand first.",
                NextStep.Plain.SHOW_CARD);
    }

    /** Lines that give the value on the board, or may, in reading order. */
    private List<ReachedLine> lines(Files files, WantedSetting wanted, Board board) {
        return reading(files, board).lines().stream()
                .filter(line -> line.condition().truth() != Truth.FALSE
                        && wanted.standsIn(line.line().kind()))
                .toList();
    }

    private static Optional<ReachedLine> last(List<ReachedLine> lines) {
        return lines.isEmpty() ? Optional.empty() : Optional.of(lines.get(lines.size() - 1));
    }

    private LineName.Spot spot(ReachedLine line) {
        return new LineName.Spot(pathOf.apply(line.file()), line.line().number());
    }

    private static boolean gives(ReachedLine line, WantedSetting wanted) {
        return line.line().kind() instanceof LineKind.Setting setting
                && wanted.newValue(setting).equals(setting.value());
    }

    private ConfigReading reading(Files files, Board board) {
        IncludeSource includes = name ->
                Optional.ofNullable(files.documents().get(pathOf.apply(name))).map(ConfigDocument::toBytes);
        return resolver.resolve(files.main(), files.document(), includes, BoardFacts.of(board))
                .reading();
    }

    /** The value's bytes alone; of a line that runs on past what a board reads, all of it that it has. */
    private static Files set(Files files, WantedSetting wanted, LineName.Spot spot) {
        ConfigDocument document = files.documents().get(spot.path());
        LineKind.Setting setting = (LineKind.Setting) document.line(spot.line()).kind();
        String value = wanted.newValue(setting);
        return value.equals(setting.value()) ? files : files.with(spot.path(), document.setValue(spot.line(), value));
    }

    private Files under(Files files, WantedSetting wanted, Filter section) throws CardException {
        ConfigDocument document = files.document();
        Optional<Integer> line = SectionRuns.of(document, parser).all().stream()
                .filter(run -> run.isUnder(section))
                .flatMap(run -> document.lines().subList(run.first() - 1, run.end() - 1).stream())
                .filter(each -> wanted.standsIn(each.kind()))
                .map(each -> each.number())
                .reduce((earlier, later) -> later);
        if (line.isPresent()) {
            LineName.Spot spot = new LineName.Spot(files.main(), line.get());
            Files changed = set(files, wanted, spot);
            if (!isReadAs(changed, line.get(), section)) {
                throw unlikeItsSection(files.main(), line.get(), section);
            }
            return changed;
        }
        return add(files, wanted, section);
    }

    private static CardException unlikeItsSection(String path, int line, Filter section) {
        return CardException.refused(
                path + " line " + line + " does not count just where " + section.text() + " does",
                "Look at the sections and includes above it, and put them right by hand first.",
                NextStep.Plain.SHOW_CARD);
    }

    /** In the last part of the file that is under the section and nothing else, else in a new one at the end. */
    private Files add(Files files, WantedSetting wanted, Filter section) throws CardException {
        Optional<SectionRuns.Run> run = SectionRuns.of(files.document(), parser).lastUnder(section);
        if (run.isPresent()) {
            Placed inside = inside(files.document(), run.get(), wanted);
            Files changed = files.with(files.main(), inside.document());
            boolean ownScope = !wanted.isParameter() || !isInOverlay(changed, inside.line());
            if (ownScope && isReadAs(changed, inside.line(), section)) {
                return changed;
            }
        }
        Placed behind = behind(files, wanted, section);
        Files changed = files.with(files.main(), behind.document());
        if (!isReadAs(changed, behind.line(), section)) {
            throw unlikeItsSection(files.main(), behind.line(), section);
        }
        return changed;
    }

    /** Behind the run's last line that is not blank. */
    private static Placed inside(ConfigDocument document, SectionRuns.Run run, WantedSetting wanted) {
        int after = run.end() - 1;
        while (after >= run.first() && document.line(after).kind() instanceof LineKind.Blank) {
            after--;
        }
        return new Placed(document.insertAfter(after, List.of(wanted.line())), after + 1);
    }

    /** At the file's end, with the section line that it needs, and every filter cleared again behind it. */
    private Placed behind(Files files, WantedSetting wanted, Filter section) {
        ConfigDocument document = files.document();
        List<SectionRuns.Run> runs = SectionRuns.of(document, parser).all();
        List<String> lines = new ArrayList<>();
        boolean includes = document.lines().stream().anyMatch(line -> line.kind() instanceof LineKind.Include);
        if (includes || !runs.get(runs.size() - 1).isUnder(ALL)) {
            lines.add(ALL.text());
        }
        boolean all = section instanceof Filter.All;
        if (!all) {
            lines.add(section.text());
        }
        if (wanted.isParameter()) {
            // A parameter behind an overlay is the overlay's; a line without a name ends that. Source: "Device trees,
            // overlays, and parameters", configuration/device-tree.adoc, commit 042aa6fd.
            lines.add("dtoverlay=");
        }
        lines.add(wanted.line());
        int line = document.lines().size() + lines.size();
        if (!all) {
            lines.add(ALL.text());
        }
        return new Placed(document.append(lines), line);
    }

    /** Whether a parameter on that line may be taken as one of an overlay above it. */
    private boolean isInOverlay(Files files, int line) {
        for (Board board : tables.boards().all()) {
            boolean open = false;
            for (ReachedLine each : reading(files, board).lines()) {
                if (isAt(files, each, line)) {
                    break;
                }
                if (each.condition().truth() != Truth.FALSE
                        && WantedSetting.isOverlay(each.line().kind())) {
                    open = WantedSetting.opensOverlay(each.line().kind());
                }
            }
            if (open) {
                return true;
            }
        }
        return false;
    }

    private boolean isAt(Files files, ReachedLine line, int number) {
        return line.line().number() == number && pathOf.apply(line.file()).equals(files.main());
    }

    /** Whether each board heeds the line just as it heeds a file with nothing but the section and the line. */
    private boolean isReadAs(Files files, int line, Filter section) {
        ConfigDocument alone = ConfigDocument.parse(new byte[0]).append(List.of(section.text(), "boot_delay=1"));
        for (Board board : tables.boards().all()) {
            Truth wanted = reading(new Files(files.main(), Map.of(files.main(), alone)), board)
                    .lines()
                    .get(0)
                    .condition()
                    .truth();
            boolean same = reading(files, board).lines().stream()
                    .filter(each -> isAt(files, each, line))
                    .map(ReachedLine::condition)
                    .map(Condition::truth)
                    .findFirst()
                    .filter(wanted::equals)
                    .isPresent();
            if (!same) {
                return false;
            }
        }
        return true;
    }
}
