package bootmend.check;

import bootmend.finding.Place;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningLine;
import bootmend.tuning.TuningLines;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.Vocabulary;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/** Values of tuning keys that are no number, or outside what is published. */
record NumberCheck(Vocabulary vocabulary) implements Check {

    private static final String STEP = "step";
    private static final String SWITCH = "switch";
    private static final Set<String> WORDS = Set.of("on", "off", "yes", "no", "true", "false", "y", "n");

    @Override
    public List<Remark> look(CardContent card) {
        return card.read().config().stream()
                .flatMap(text -> TuningLines.find(text.document(), vocabulary).stream()
                        .filter(TuningLine::isActive)
                        .flatMap(line -> remark(text, line).stream()))
                .toList();
    }

    private static Optional<Remark> remark(ConfigText text, TuningLine line) {
        TuningKey key = line.tuningKey();
        Place where = Place.line(text.path(), line.lineNumber());
        String written = line.key() + "=" + line.value();
        OptionalLong number = TuningNumber.parse(line.value());
        if (key.unit().equals(SWITCH) && WORDS.contains(line.value())) {
            return Optional.empty();
        }
        if (number.isEmpty()) {
            return SpellingCheck.explains(line.value())
                    ? Optional.empty()
                    : Optional.of(Remark.of(
                            "value-not-a-number",
                            where,
                            line.key() + " has the value \"" + line.value() + "\", which is no number."));
        }
        long value = number.getAsLong();
        if (key.clamped() && value > key.max().orElse(Long.MAX_VALUE)) {
            return Optional.of(Remark.of(
                    "temp-limit-above-85",
                    where,
                    written + " counts as " + key.max().getAsLong() + "."));
        }
        boolean below = value < key.min().orElse(Long.MIN_VALUE);
        boolean above = value > key.max().orElse(Long.MAX_VALUE);
        // A voltage step that is not defined is told about by the check of limits.
        return (below || above) && !key.unit().equals(STEP)
                ? Optional.of(Remark.of(
                        "value-out-of-range",
                        where,
                        written + " is " + (below ? "below " : "above ") + "what is published, " + range(key) + "."))
                : Optional.empty();
    }

    private static String range(TuningKey key) {
        String low = key.min().isPresent() ? Long.toString(key.min().getAsLong()) : "no lowest value";
        String high = key.max().isPresent() ? Long.toString(key.max().getAsLong()) : "no highest value";
        return low + " to " + high;
    }
}
