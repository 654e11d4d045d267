package bootmend.tuning.resolve;

import java.util.List;

/**
 * What a key comes to on a board.
 *
 * @param key the key
 * @param state how sure it is
 * @param chosen the line that gives the value; where it depends, the latest line that may
 * @param dependsOn what it depends on; empty unless the state is {@link EffectiveState#DEPENDS}
 * @param otherwise where it depends, what else it may come to, latest line first; where none of these is sure, the
 *     board's stock value is one more possibility
 * @param shadowed lines that give the key a value which a later or more exact line replaces in any case
 * @param reason why the board ignores the key; empty unless the state is {@link EffectiveState#IGNORED}
 */
public record Effective(
        String key,
        EffectiveState state,
        Candidate chosen,
        List<String> dependsOn,
        List<Candidate> otherwise,
        List<Candidate> shadowed,
        String reason) {

    public Effective {
        dependsOn = List.copyOf(dependsOn);
        otherwise = List.copyOf(otherwise);
        shadowed = List.copyOf(shadowed);
    }

    /** The value as the board takes it. */
    public String value() {
        return chosen.value();
    }

    public String file() {
        return chosen.file();
    }

    /** Line number in {@link #file()}, counted from 1. */
    public int line() {
        return chosen.line();
    }

    /** Whether the board's stock value is one of the possibilities. */
    public boolean mayBeStock() {
        return state == EffectiveState.DEPENDS && otherwise.stream().noneMatch(Candidate::isSure);
    }
}
