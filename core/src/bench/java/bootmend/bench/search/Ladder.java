package bootmend.bench.search;

import bootmend.trial.Setting;
import bootmend.trial.Voltage;
import java.util.Optional;

/** 50 MHz more after each hold, a step of voltage more after each failure (common practice, no source). */
record Ladder(double minutes) implements Strategy {

    @Override
    public String words() {
        return "50 MHz up, a step of voltage at a failure, runs of " + Math.round(minutes) + " minutes";
    }

    @Override
    public Optional<Setting> keep(Lab lab) {
        Family family = lab.board.family;
        Optional<Setting> kept = Optional.empty();
        boolean proven = false;
        long clock = family.stock;
        int level = 0;
        while (level <= family.most) {
            Setting next = new Setting(clock, Voltage.of(family.axis, level * family.axis.grain()));
            if (lab.run(next, minutes)) {
                kept = Optional.of(next);
                proven = minutes >= 45;
                clock += 50;
            } else if (lab.trials.get(lab.trials.size() - 1).run().mask().orElse(0) != 0) {
                break;
            } else {
                level++;
            }
        }
        if (kept.isPresent() && !proven && !lab.run(kept.get(), 45)) {
            return Optional.empty();
        }
        return kept;
    }
}
