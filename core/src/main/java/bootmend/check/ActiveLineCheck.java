package bootmend.check;

import bootmend.finding.Place;
import bootmend.tuning.TuningLine;
import bootmend.tuning.TuningLines;
import bootmend.tuning.Vocabulary;
import bootmend.tuning.resolve.StockLines;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** Active tuning lines that going back to stock would take out, and those that hold the stock value already. */
record ActiveLineCheck(Vocabulary vocabulary) implements Check {

    @Override
    public List<Remark> look(CardContent card) {
        return card.read().config().stream()
                .flatMap(text -> TuningLines.find(text.document(), vocabulary).stream()
                        .filter(TuningLine::resets)
                        .flatMap(line -> remarks(card, text, line)))
                .toList();
    }

    static boolean isTuned(CardContent card, Vocabulary vocabulary) {
        return card.read().config().stream()
                .flatMap(text -> TuningLines.find(text.document(), vocabulary).stream()
                        .filter(TuningLine::resets)
                        .filter(line -> !on(card, text, line).everywhere()))
                .findAny()
                .isPresent();
    }

    private static StockLines.OnBoards on(CardContent card, ConfigText text, TuningLine line) {
        return card.stockLines()
                .of(text.path(), line.lineNumber(), line.tuningKey().key());
    }

    private static Stream<Remark> remarks(CardContent card, ConfigText text, TuningLine line) {
        Place where = Place.line(text.path(), line.lineNumber());
        String written = line.key() + "=" + line.value();
        StockLines.OnBoards on = on(card, text, line);
        List<Remark> remarks = new ArrayList<>();
        if (!on.off().isEmpty() || on.atStock().isEmpty() && on.byFirmware().isEmpty()) {
            remarks.add(new Remark(
                    "tuning-line-active",
                    where,
                    written + " is active"
                            + line.section()
                                    .map(section -> " in section " + section)
                                    .orElse("") + ".",
                    on.off().isEmpty()
                                    || on.atStock().isEmpty() && on.byFirmware().isEmpty()
                            ? Set.of()
                            : Set.copyOf(on.off())));
        }
        if (!on.byFirmware().isEmpty()) {
            remarks.add(new Remark(
                    "line-stock-by-firmware",
                    where,
                    written + " is stock with one boot firmware and not with another.",
                    Set.copyOf(on.byFirmware())));
        }
        if (!on.atStock().isEmpty()) {
            remarks.add(new Remark(
                    "line-set-to-stock",
                    where,
                    written + " is the published stock value on these boards.",
                    Set.copyOf(on.atStock())));
        }
        return remarks.stream();
    }
}
