package bootmend.trial;

import bootmend.tuning.TuningTables;

/**
 * How far the voltage step may go.
 *
 * @param withoutForceTurbo highest step that a board takes without {@code force_turbo=1}
 * @param published end of the published range
 */
public record StepLimits(long withoutForceTurbo, long published) {

    /** Source: "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446. */
    private static final long WITHOUT_FORCE_TURBO = 6;

    public static StepLimits of(TuningTables tables) {
        return new StepLimits(
                WITHOUT_FORCE_TURBO,
                tables.vocabulary()
                        .find(VoltageAxis.STEPS.key())
                        .orElseThrow()
                        .max()
                        .orElse(WITHOUT_FORCE_TURBO));
    }
}
