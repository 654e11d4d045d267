package bootmend.check;

import bootmend.finding.Place;
import bootmend.tuning.ClockChange;
import bootmend.tuning.Figure;
import bootmend.tuning.Stock;
import bootmend.tuning.StockValues;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.Vocabulary;
import bootmend.tuning.resolve.Candidate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.LongStream;

/**
 * Clocks above what the board ships with, with the voltage given by hand or scaled by the board, and clock floors
 * below it. A clock whose stock is not published for a board is passed over there.
 *
 * <p>Source: "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446.
 */
record ClockCheck(Vocabulary vocabulary, StockValues stock) implements Check {

    private static final String FLOOR = "_min";

    /** One line against stock, over all boards on which the rule is the same. */
    private record Subject(String rule, Place where, String line) {}

    @Override
    public List<Remark> look(CardContent card) {
        Map<Subject, Map<String, Set<String>>> found = new LinkedHashMap<>();
        for (BoardReading board : card.boards()) {
            look(board)
                    .forEach((subject, byChange) -> byChange.forEach(
                            (change, keys) -> found.computeIfAbsent(subject, none -> new LinkedHashMap<>())
                                    .computeIfAbsent(change + keys(subject, keys), none -> new LinkedHashSet<>())
                                    .add(board.id())));
        }
        List<Remark> remarks = new ArrayList<>();
        found.forEach((subject, compared) -> remarks.add(remark(subject, compared)));
        return remarks;
    }

    /** For each line, how far it is off stock in words, and the clocks which it takes that far. */
    private Map<Subject, Map<String, List<String>>> look(BoardReading board) {
        boolean byHand = !board.possible("over_voltage").isEmpty();
        String above = byHand ? "clock-above-stock-hand-voltage" : "clock-above-stock-scaled-voltage";
        Map<Subject, Map<String, List<String>>> found = new LinkedHashMap<>();
        for (TuningKey key : vocabulary.keys()) {
            boolean floor = key.key().endsWith(FLOOR);
            OptionalLong usual = usual(key, board, floor);
            if (usual.isPresent()) {
                board.possible(key.key()).stream()
                        .filter(line -> differs(line, usual.getAsLong(), floor)
                                && !line.setBy().equals("arm_boost"))
                        .forEach(line -> found.computeIfAbsent(
                                        subject(floor ? "clock-floor-below-stock" : above, line),
                                        none -> new LinkedHashMap<>())
                                .computeIfAbsent(change(line, usual.getAsLong()), none -> new ArrayList<>())
                                .add(key.key()));
            }
        }
        return found;
    }

    private static String keys(Subject subject, List<String> keys) {
        return keys.stream().allMatch(key -> subject.line().startsWith(key + "="))
                ? ""
                : " for " + String.join(" ", keys);
    }

    private static Subject subject(String rule, Candidate line) {
        return new Subject(rule, Places.of(line), line.setBy() + "=" + line.written());
    }

    private static Remark remark(Subject subject, Map<String, Set<String>> compared) {
        List<String> parts = new ArrayList<>();
        Set<String> boards = new TreeSet<>();
        compared.forEach((words, on) -> {
            parts.add(words + " on " + String.join(" ", on));
            boards.addAll(on);
        });
        return new Remark(
                subject.rule(),
                subject.where(),
                subject.line() + " against stock: " + String.join("; ", parts) + ".",
                boards);
    }

    private static boolean differs(Candidate line, long usual, boolean floor) {
        OptionalLong value = TuningNumber.parse(line.value());
        return value.isPresent() && (floor ? value.getAsLong() < usual : value.getAsLong() > usual);
    }

    private static String change(Candidate line, long usual) {
        Figure change = ClockChange.percent(
                new Figure.Value(TuningNumber.parse(line.value()).getAsLong()), new Figure.Value(usual));
        String percent =
                change instanceof Figure.Value value ? String.format(Locale.ROOT, "%+.0f %%", value.value()) : "";
        return percent + " (stock " + usual + " MHz)";
    }

    /** The stock clock that a line must pass to differ for sure, whichever revision the board is. */
    private OptionalLong usual(TuningKey key, BoardReading board, boolean floor) {
        boolean boosted = board.possible("arm_boost").stream()
                .anyMatch(line -> TuningNumber.parse(line.value()).orElse(0) == 1);
        var values = stock.of(key.key(), board.id(), board.resolution().facts().revisionNumber()).stream()
                .flatMapToLong(each -> {
                    if (each instanceof Stock.WithBoost boost) {
                        return LongStream.of(boosted ? boost.boosted() : boost.number());
                    }
                    if (each instanceof Stock.Changed changed
                            && changed.number().isPresent()) {
                        return LongStream.of(changed.number().getAsLong());
                    }
                    return each instanceof Stock.Value value ? LongStream.of(value.number()) : LongStream.empty();
                });
        return floor ? values.min() : values.max();
    }
}
