package bootmend.trial.search;

import bootmend.trial.Placed;
import bootmend.trial.VoltageAxis;
import bootmend.trial.VoltageMode;
import bootmend.tuning.TuningTables;
import bootmend.tuning.VoltageControl;
import java.util.List;
import java.util.Optional;

/**
 * The voltage axis that a search goes on with, and why that is another one than before.
 *
 * @param change a sentence; empty where the voltage is set as before
 */
record AxisChoice(VoltageAxis axis, String change) {

    static AxisChoice of(String board, List<Placed> trials, TuningTables tables) {
        Optional<VoltageControl> control = tables.voltageControls().of(board);
        VoltageAxis first = control.map(known -> axis(known.first())).orElse(VoltageAxis.STEPS);
        Optional<VoltageMode> before = trials.stream()
                .map(trial -> trial.setting().voltage().mode())
                .filter(mode -> mode != VoltageMode.LEFT)
                .reduce((earlier, later) -> later);
        if (before.isEmpty()) {
            return new AxisChoice(first, first(trials, first, control));
        }
        VoltageAxis used = before.get() == VoltageMode.FIXED ? VoltageAxis.STEPS : VoltageAxis.SHIFT;
        boolean deprecated = used == VoltageAxis.STEPS && first == VoltageAxis.SHIFT;
        return deprecated
                ? new AxisChoice(
                        first,
                        "The voltage is no longer " + before.get().words() + " but shifted by " + first.key()
                                + ", since " + control.orElseThrow().why()
                                + ". Trials on one scale say nothing of the other.")
                : new AxisChoice(used, "");
    }

    private static String first(List<Placed> trials, VoltageAxis first, Optional<VoltageControl> control) {
        boolean ranLeft = trials.stream().anyMatch(trial -> trial.setting().axis() != first);
        if (!ranLeft) {
            return "";
        }
        VoltageMode mode = first == VoltageAxis.STEPS ? VoltageMode.FIXED : VoltageMode.SHIFTED;
        return "From here on the voltage is " + mode.words() + " and no longer left to the board, since "
                + control.map(VoltageControl::why).orElse("nothing is published of this board") + ".";
    }

    private static VoltageAxis axis(String key) {
        return key.equals(VoltageAxis.SHIFT.key()) ? VoltageAxis.SHIFT : VoltageAxis.STEPS;
    }
}
