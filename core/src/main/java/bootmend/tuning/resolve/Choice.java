package bootmend.tuning.resolve;

import bootmend.config.Condition;
import bootmend.tuning.TuningNumber;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalLong;

/**
 * Picks a key's effective value: the last candidate that counts wins.
 *
 * <p>Source: a Linux distributor's boards documentation, "Edit the boot configuration", section on format; the examples
 * of "Conditional filters", config_txt/conditional.adoc, commits 23cc7a36 and 3e67d54c, rest on it.
 */
final class Choice {

    private Choice() {}

    /** From at least one candidate, the weakest first. */
    static Effective among(String key, List<Candidate> weakestFirst) {
        List<Candidate> strongestFirst = new ArrayList<>(weakestFirst);
        Collections.reverse(strongestFirst);
        int sure = 0;
        while (sure < strongestFirst.size() && !strongestFirst.get(sure).isSure()) {
            sure++;
        }
        int end = Math.min(sure + 1, strongestFirst.size());
        List<Candidate> possible = strongestFirst.subList(0, end);
        List<Candidate> shadowed = strongestFirst.subList(end, strongestFirst.size());
        Candidate top = possible.get(0);
        if (sure < strongestFirst.size() && possible.stream().allMatch(other -> sameValue(top, other))) {
            // Whichever of them counts, the value is the same; the sure line stands for all.
            return new Effective(key, EffectiveState.SET, possible.get(sure), List.of(), List.of(), shadowed, "");
        }
        List<String> dependsOn = Condition.dependsOnAll(possible.stream().map(Candidate::condition))
                .dependsOn();
        return new Effective(
                key, EffectiveState.DEPENDS, top, dependsOn, possible.subList(1, possible.size()), shadowed, "");
    }

    /** The board does nothing with the key; the last candidate is the one to show. */
    static Effective ignored(String key, List<Candidate> weakestFirst, String reason) {
        int last = weakestFirst.size() - 1;
        return new Effective(
                key,
                EffectiveState.IGNORED,
                weakestFirst.get(last),
                List.of(),
                List.of(),
                weakestFirst.subList(0, last),
                reason);
    }

    private static boolean sameValue(Candidate left, Candidate right) {
        OptionalLong number = TuningNumber.parse(left.value());
        return number.isPresent()
                ? number.equals(TuningNumber.parse(right.value()))
                : left.value().equals(right.value());
    }
}
