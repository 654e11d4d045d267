package bootmend.check;

import bootmend.config.ConfigLine;
import bootmend.config.Filter;
import bootmend.config.FilterParser;
import bootmend.config.LineKind;
import bootmend.config.ReachedLine;
import bootmend.config.Truth;
import bootmend.finding.Place;
import bootmend.tuning.Boards;
import bootmend.tuning.FilterBoards;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Section lines that are none, and lines that no board which the card is for reads. */
record SectionCheck(Boards boards, FilterBoards filters) implements Check {

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>(unknown(card));
        remarks.addAll(notOnBoards(card));
        if (card.bootable()) {
            remarks.addAll(unread(card));
        }
        return remarks;
    }

    private List<Remark> unknown(CardContent card) {
        FilterParser parser = new FilterParser(boards.models());
        return card.read().config().stream()
                .flatMap(text -> text.document().lines().stream()
                        .filter(line -> line.kind() instanceof LineKind.Section section
                                && parser.parse(section.raw()) instanceof Filter.Unknown)
                        .map(line -> Remark.of(
                                "section-unknown",
                                Place.line(text.path(), line.number()),
                                "\"" + line.text() + "\" is no section that is published.")))
                .toList();
    }

    /** Sections of kinds that some of the card's boards do not know, and those for one board alone. */
    private List<Remark> notOnBoards(CardContent card) {
        FilterParser parser = new FilterParser(boards.models());
        List<Remark> remarks = new ArrayList<>();
        for (ConfigText text : card.read().config()) {
            for (ConfigLine line : text.document().lines()) {
                if (line.kind() instanceof LineKind.Section section) {
                    Filter filter = parser.parse(section.raw());
                    Place where = Place.line(text.path(), line.number());
                    if (filter instanceof Filter.Serial) {
                        remarks.add(Remark.of(
                                "section-names-one-board", where, section.raw() + " is for one board alone."));
                    }
                    for (BoardReading board : card.boards()) {
                        filters.missingOn(board.board(), filter)
                                .ifPresent(others -> remarks.add(Remark.on(
                                        board,
                                        "filter-not-on-board",
                                        where,
                                        section.raw() + " is published for " + others + " only.")));
                    }
                }
            }
        }
        return remarks;
    }

    /** One section of a file, from its first line that is not read. */
    private record Unread(String file, String section) {}

    private static List<Remark> unread(CardContent card) {
        Map<Place, ReachedLine> reached = new LinkedHashMap<>();
        Map<Place, Boolean> mayCount = new HashMap<>();
        for (BoardReading board : card.boards()) {
            for (ReachedLine line : board.resolution().reading().lines()) {
                Place place = Places.of(line);
                reached.putIfAbsent(place, line);
                mayCount.merge(place, line.condition().truth() != Truth.FALSE || line.none(), Boolean::logicalOr);
            }
        }
        Map<Unread, List<Place>> unread = new LinkedHashMap<>();
        reached.forEach((place, line) -> {
            if (!mayCount.get(place)) {
                unread.computeIfAbsent(new Unread(line.file(), section(line.line())), none -> new ArrayList<>())
                        .add(place);
            }
        });
        List<Remark> remarks = new ArrayList<>();
        unread.forEach((section, lines) -> remarks.add(Remark.of(
                "section-no-board",
                lines.get(0),
                "Section " + section.section() + " has " + lines.size() + (lines.size() == 1 ? " line" : " lines")
                        + " that none of the card's boards reads (" + String.join(" ", card.boardIds()) + ").")));
        return remarks;
    }

    private static String section(ConfigLine line) {
        return line.section().orElse("above the first section line");
    }
}
