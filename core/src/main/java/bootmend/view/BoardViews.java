package bootmend.view;

import bootmend.tuning.Figure;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.AgainstStock;
import bootmend.tuning.resolve.Effective;
import bootmend.tuning.resolve.Resolution;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** Makes views of what a config file comes to on a board. */
final class BoardViews {

    /** How many other values a key may come to are told; a bound against hostile cards. */
    private static final int MOST_OTHERS = 16;

    private static final String POWER_LAW = "S12";
    private static final double MILLIONTHS = 1_000_000;

    private final TuningTables tables;
    private final UnaryOperator<String> paths;

    /** @param paths gives the path of a file that an include line names */
    BoardViews(TuningTables tables, UnaryOperator<String> paths) {
        this.tables = tables;
        this.paths = paths;
    }

    BoardView of(Resolution resolution) {
        AgainstStock numbers = new AgainstStock(tables, resolution);
        return new BoardView(
                resolution.facts().board().orElseThrow().id(),
                resolution.effective().stream()
                        .filter(each -> tables.vocabulary()
                                .findOnCard(each.key())
                                .filter(TuningKey::tunes)
                                .isPresent())
                        .map(effective -> effective(effective, numbers))
                        .toList(),
                power(numbers.cpuPower()));
    }

    private EffectiveView effective(Effective effective, AgainstStock numbers) {
        var key = tables.vocabulary().findOnCard(effective.key()).orElseThrow();
        return new EffectiveView(
                effective.key(),
                effective.value(),
                key.unit(),
                effective.state().word(),
                paths.apply(effective.file()),
                effective.line(),
                effective.chosen().setBy(),
                effective.dependsOn(),
                effective.otherwise().stream()
                        .limit(MOST_OTHERS)
                        .map(other ->
                                new EffectiveView.OtherValue(other.value(), paths.apply(other.file()), other.line()))
                        .toList(),
                effective.mayBeStock(),
                values(numbers.stock(key)).stream().map(Double::longValue).toList(),
                values(numbers.percent(effective)),
                numbers.volts(effective).flatMap(BoardViews::value),
                effective.reason());
    }

    private Optional<PowerView> power(List<Figure> ratios) {
        if (ratios.isEmpty()) {
            return Optional.empty();
        }
        String source = tables.sources().find(POWER_LAW).orElseThrow().citation();
        List<Double> known = values(ratios);
        return Optional.of(new PowerView(known, known.isEmpty() ? unknown(ratios.get(0)) : "", source));
    }

    private static String unknown(Figure figure) {
        return figure instanceof Figure.DependsOn depends
                ? "it depends on " + depends.what()
                : figure instanceof Figure.NotPublished missing ? "not published: " + missing.what() : "";
    }

    /** Exact to a microvolt, and to far less than a percent. */
    private static List<Double> values(List<Figure> figures) {
        return figures.stream().flatMap(figure -> value(figure).stream()).toList();
    }

    private static Optional<Double> value(Figure figure) {
        return figure instanceof Figure.Value value
                ? Optional.of(Math.round(value.value() * MILLIONTHS) / MILLIONTHS)
                : Optional.empty();
    }
}
