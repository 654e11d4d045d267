package bootmend.trial;

import bootmend.tuning.TuningTables;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Says why a setting is not to be suggested. */
final class Limits {

    private final StepLimits steps;
    private final HeatEstimate heat;
    private final OptionalDouble ambient;

    Limits(TuningTables tables, HeatEstimate heat, OptionalDouble ambient) {
        this.steps = StepLimits.of(tables);
        this.heat = heat;
        this.ambient = ambient;
    }

    /** A sentence, where the setting passes a limit. */
    Optional<String> passed(Setting setting) {
        if (setting.step() > steps.published()) {
            return Optional.of(
                    setting.words() + " passes the published range, which ends at step " + steps.published() + ".");
        }
        if (setting.step() > steps.withoutForceTurbo()) {
            return Optional.of(setting.words() + " needs force_turbo=1, which with more voltage can permanently mark a "
                    + "board so that its warranty is void.");
        }
        return peak(setting)
                .filter(peak -> peak.celsius() > LogSummary.HOT)
                .map(peak -> String.format(
                        Locale.ROOT,
                        "%s would come to about %.1f degC, over %.0f degC.",
                        setting.words(),
                        peak.celsius(),
                        LogSummary.HOT));
    }

    /** The estimated peak, where there is an estimate and an ambient temperature. */
    Optional<HeatEstimate.Peak> peak(Setting setting) {
        return heat instanceof HeatEstimate.Fitted fitted && ambient.isPresent()
                ? Optional.of(fitted.peak(setting, ambient.getAsDouble()))
                : Optional.empty();
    }

    /** Why there is no estimate; empty where there is one. */
    String noPeak() {
        if (heat instanceof HeatEstimate.Refused refused) {
            return refused.why();
        }
        return ambient.isEmpty() ? "no ambient temperature is given" : "";
    }
}
