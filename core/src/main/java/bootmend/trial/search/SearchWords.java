package bootmend.trial.search;

import bootmend.trial.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Says what a search comes to. */
final class SearchWords {

    private static final double PERCENT = 100;

    private final Hunt hunt;
    private final AxisChoice choice;
    private final Drafts drafts;

    SearchWords(Hunt hunt, AxisChoice choice, Drafts drafts) {
        this.hunt = hunt;
        this.choice = choice;
        this.drafts = drafts;
    }

    Advice advice() {
        return advice(true);
    }

    Advice next() {
        return advice(false);
    }

    private Advice advice(boolean withOutcomes) {
        if (hunt.isEmpty()) {
            return drafts.of(
                    Advice.Action.IMPROVE,
                    Optional.empty(),
                    0,
                    "With this cooling and supply even the stock clock comes too near to 80 degC or throttles. Improve them, "
                            + "give them their own names, and run at stock again.",
                    List.of());
        }
        Step step = hunt.next();
        return switch (step.kind()) {
            case SCREEN -> run(Advice.Action.TRY, step, screen(step), withOutcomes);
            case PROVE -> run(Advice.Action.RUN_LONG, step, prove(step), withOutcomes);
            case DONE -> done(step);
            case NOTHING ->
                drafts.of(
                        Advice.Action.STOP,
                        Optional.empty(),
                        0,
                        "Nothing held, and no setting is left that is worth trying. Put the board back to stock and look "
                                + "at its cooling and supply.",
                        List.of());
        };
    }

    private Advice run(Advice.Action action, Step step, String why, boolean withOutcomes) {
        return drafts.of(
                action,
                Optional.of(hunt.setting(step)),
                step.minutes(),
                OptionalDouble.of(step.chance()),
                why,
                choice.change(),
                withOutcomes ? outcomes(step) : List.of(),
                behind(step),
                hunt.stops(step.at()));
    }

    private Advice done(Step step) {
        return drafts.keep(
                hunt.setting(step),
                "Nothing is left to gain: " + hunt.setting(step).words()
                        + " is known-good, holds 45 minutes with a chance of "
                        + percent(step.chance()) + ", and with one of " + percent(step.near())
                        + " it is within 25 MHz and one voltage step of the best this board can do. Keep it.",
                hunt.stops(step.at()));
    }

    private String screen(Step step) {
        Setting setting = hunt.setting(step);
        boolean slower = drafts.best()
                .filter(best -> best.setting().axis() == setting.axis()
                        && best.setting().clock() > setting.clock())
                .isPresent();
        return "A short run here tells most for its minutes of where the highest clock that holds lies, and the lowest "
                + "voltage there. "
                + (slower
                        ? "It is slower than what held, and tells how much clock a step of voltage is worth on this board. "
                        : "")
                + "It is expected to hold with a chance of " + percent(step.chance()) + ".";
    }

    private String prove(Step step) {
        return "This is what the trials so far lead to: with a chance of " + percent(step.near())
                + " it holds and is within 25 MHz and one voltage step of the best this board can do. A run of 45 minutes "
                + "makes it known-good; it is expected to hold with a chance of " + percent(step.chance()) + ".";
    }

    private List<Setting> behind(Step step) {
        return step.behind().stream()
                .filter(at -> !at.equals(step.at()))
                .map(hunt::setting)
                .toList();
    }

    private List<Advice.Outlook> outcomes(Step step) {
        List<Advice.Outlook> outcomes = new ArrayList<>();
        outcomes.add(new Advice.Outlook("it holds", then(hunt.after(step, Observation.Kind.HELD))));
        outcomes.add(new Advice.Outlook("it fails while it runs", then(hunt.after(step, Observation.Kind.FAILED))));
        outcomes.add(new Advice.Outlook("it does not boot", then(hunt.after(step, Observation.Kind.NO_BOOT))));
        return outcomes;
    }

    private String then(Step step) {
        return switch (step.kind()) {
            case SCREEN -> hunt.setting(step).words() + " for " + Math.round(step.minutes()) + " minutes";
            case PROVE -> hunt.setting(step).words() + " for 45 minutes, to keep it";
            case DONE -> "keep " + hunt.setting(step).words();
            case NOTHING -> "stop: nothing holds";
        };
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.0f %%", share * PERCENT);
    }
}
