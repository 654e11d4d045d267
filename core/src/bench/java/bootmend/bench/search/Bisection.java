package bootmend.bench.search;

import bootmend.trial.Setting;
import bootmend.trial.Voltage;
import java.util.Optional;

/** Halves the range of clocks at the highest voltage, then the range of voltages at the clock that held. */
record Bisection(double minutes) implements Strategy {

    @Override
    public String words() {
        return "bisection, runs of " + Math.round(minutes) + " minutes";
    }

    @Override
    public Optional<Setting> keep(Lab lab) {
        Family family = lab.board.family;
        long low = -1;
        long high = family.stock / 2 / 25;
        while (high - low > 1) {
            long middle = (low + high) / 2;
            if (lab.run(at(family, middle, family.most), minutes)) {
                low = middle;
            } else {
                high = middle;
            }
        }
        if (low < 0) {
            return Optional.empty();
        }
        long good = family.most;
        long bad = family.least - 1L;
        while (good - bad > 1) {
            long middle = Math.floorDiv(good + bad, 2);
            if (lab.run(at(family, low, middle), minutes)) {
                good = middle;
            } else {
                bad = middle;
            }
        }
        return Optional.of(at(family, low, good));
    }

    private static Setting at(Family family, long clock, long level) {
        return new Setting(family.stock + 25 * clock, Voltage.of(family.axis, level * family.axis.grain()));
    }
}
