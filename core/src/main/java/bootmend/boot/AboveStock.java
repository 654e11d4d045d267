package bootmend.boot;

import bootmend.tuning.Figure;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.AgainstStock;
import bootmend.tuning.resolve.Effective;
import bootmend.tuning.resolve.EffectiveState;
import bootmend.tuning.resolve.Resolution;
import java.util.List;
import java.util.OptionalLong;

/** Which tuning keys a board's settings take away from stock. */
final class AboveStock {

    private AboveStock() {}

    /** In the vocabulary's order; a key whose stock value is not published counts as away from it. */
    static List<String> keys(TuningTables tables, Resolution settings) {
        AgainstStock stock = new AgainstStock(tables, settings);
        return settings.effective().stream()
                .filter(each -> each.state() != EffectiveState.IGNORED)
                .filter(each -> key(tables, each).tunes() && !isStock(tables, stock, each))
                .map(Effective::key)
                .toList();
    }

    private static boolean isStock(TuningTables tables, AgainstStock stock, Effective effective) {
        OptionalLong number = TuningNumber.parse(effective.value());
        return effective.state() == EffectiveState.SET
                && number.isPresent()
                && stock.stock(key(tables, effective)).stream().allMatch(new Figure.Value(number.getAsLong())::equals);
    }

    /** Those that only have the look of a tuning key are known by their pattern. */
    private static TuningKey key(TuningTables tables, Effective effective) {
        return tables.vocabulary().findOnCard(effective.key()).orElseThrow();
    }
}
