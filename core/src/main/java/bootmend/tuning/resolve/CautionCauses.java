package bootmend.tuning.resolve;

import bootmend.tuning.Caution;
import bootmend.tuning.Figure;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.TuningTables;
import bootmend.tuning.WarrantyBit;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;

/** Finds what in a board's effective values calls for a caution; what cannot be told calls for it too. */
public final class CautionCauses {

    private static final String TURBO = "force_turbo";

    private final TuningTables tables;

    public CautionCauses(TuningTables tables) {
        this.tables = tables;
    }

    /** The causes, as {@link Caution#causes} writes them; none where nothing is tuned. The board must be known. */
    public Set<String> of(Resolution resolution) {
        AgainstStock againstStock = new AgainstStock(tables, resolution);
        Set<String> causes = new HashSet<>();
        for (Effective effective : resolution.effective()) {
            if (effective.state() != EffectiveState.IGNORED) {
                TuningKey key = tables.vocabulary().findOnCard(effective.key()).orElseThrow();
                if (key.tunes() && !isAtStock(key, effective, againstStock)) {
                    causes.add(Caution.TUNED);
                }
                sides(key.group(), effective, againstStock.stock(key), causes);
            }
        }
        if (mayVoidWarranty(resolution)) {
            causes.add(Caution.WARRANTY);
        }
        return causes;
    }

    private boolean isAtStock(TuningKey key, Effective effective, AgainstStock againstStock) {
        return possible(effective)
                .allMatch(candidate -> StockLines.isStock(key, candidate.value(), againstStock, tables));
    }

    private static void sides(String group, Effective effective, List<Figure> stock, Set<String> causes) {
        for (Candidate candidate : possible(effective).toList()) {
            OptionalLong number = TuningNumber.parse(candidate.value());
            for (Figure each : stock) {
                if (number.isPresent() && each instanceof Figure.Value base) {
                    if (number.getAsLong() > base.value()) {
                        causes.add(group + Caution.ABOVE);
                    } else if (number.getAsLong() < base.value()) {
                        causes.add(group + Caution.BELOW);
                    }
                } else {
                    causes.add(group + Caution.ABOVE);
                    causes.add(group + Caution.BELOW);
                }
            }
        }
    }

    /**
     * Source: "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446 (the settings); "Revision codes",
     * revision-codes.adoc, commit 0456a78c, footnote (the board that never sets the bit).
     */
    private boolean mayVoidWarranty(Resolution resolution) {
        return resolution.facts().board().orElseThrow().warrantyBit() != WarrantyBit.NEVER_SET
                && resolution
                        .tuning(TURBO)
                        .filter(CautionCauses::mayBeAboveZero)
                        .isPresent()
                && resolution.effective().stream()
                        .filter(each -> tables.vocabulary()
                                .findOnCard(each.key())
                                .filter(TuningKey::setsVoltage)
                                .isPresent())
                        .anyMatch(CautionCauses::mayBeAboveZero);
    }

    private static boolean mayBeAboveZero(Effective effective) {
        return effective.state() != EffectiveState.IGNORED
                && possible(effective)
                        .map(candidate -> TuningNumber.parse(candidate.value()))
                        .anyMatch(number -> number.isEmpty() || number.getAsLong() > 0);
    }

    private static Stream<Candidate> possible(Effective effective) {
        return Stream.concat(Stream.of(effective.chosen()), effective.otherwise().stream());
    }
}
