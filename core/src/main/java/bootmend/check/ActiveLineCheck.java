package bootmend.check;

import bootmend.finding.Place;
import bootmend.tuning.TuningLine;
import bootmend.tuning.TuningLines;
import bootmend.tuning.Vocabulary;
import java.util.List;
import java.util.stream.Stream;

/** Active tuning lines that going back to stock would take out. */
record ActiveLineCheck(Vocabulary vocabulary) implements Check {

    @Override
    public List<Remark> look(CardContent card) {
        return lines(card, vocabulary).toList();
    }

    static boolean isTuned(CardContent card, Vocabulary vocabulary) {
        return lines(card, vocabulary).findAny().isPresent();
    }

    private static Stream<Remark> lines(CardContent card, Vocabulary vocabulary) {
        return card.read().config().stream()
                .flatMap(text -> TuningLines.find(text.document(), vocabulary).stream()
                        .filter(TuningLine::resets)
                        .map(line -> remark(text, line)));
    }

    private static Remark remark(ConfigText text, TuningLine line) {
        return Remark.of(
                "tuning-line-active",
                Place.line(text.path(), line.lineNumber()),
                line.key() + "=" + line.value() + " is active"
                        + line.section()
                                .map(section -> " in section " + section)
                                .orElse("") + ".");
    }
}
