package bootmend.bench.search;

import bootmend.trial.Setting;
import bootmend.trial.search.Advice;
import bootmend.trial.search.Adviser;
import java.util.Optional;

/**
 * What bootmend advises, followed to the end.
 *
 * @param change trial before which the board gets another cooling; 0 for never
 */
record Advised(int change) implements Strategy {

    private static final int MOST = 60;

    @Override
    public String words() {
        return "advice";
    }

    @Override
    public Optional<Setting> keep(Lab lab) {
        for (int i = 0; i < MOST; i++) {
            if (change > 0 && i == change) {
                boolean fan = lab.board.cooling.words().equals("fan");
                lab.board = lab.board.cooledBy(fan ? Cooling.plain(lab.random) : Cooling.fan(lab.random));
            }
            Advice advice = new Adviser(lab.board.family.board, lab.placed(), lab.surroundings(), lab.tables).next();
            if (advice.setting().isEmpty()) {
                return advice.bestIsKnownGood() ? advice.best() : Optional.empty();
            }
            lab.run(advice.setting().get(), advice.minutes().getAsDouble());
        }
        return Optional.empty();
    }
}
