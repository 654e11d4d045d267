package bootmend.adaptive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Against the first example of A. B. Watson, "QUEST+", Journal of Vision 17(3):10, 2017: the contrast threshold of one
 * observer, contrasts and thresholds from -40 to 0 dB by 1, a Weibull function of decibels with slope 3.5, lower asymptote
 * 0.5 and lapse rate 0.02, every threshold as likely before. The function, its numbers, the 32 contrasts and the estimate
 * are values from memory.
 */
class QuestPlusTest {

    private static final int LOWEST = -40;
    private static final int COUNT = 41;
    private static final int CORRECT = 1;

    private static final int[] CONTRASTS = {
        -18, -22, -25, -28, -30, -22, -13, -15, -16, -18, -19, -20, -21, -22, -23, -19,
        -20, -20, -18, -18, -19, -17, -17, -18, -18, -18, -19, -19, -19, -19, -19, -19
    };

    private static double weibull(int test, int outcome, int hypothesis) {
        double decibels = test - (double) hypothesis;
        double correct = 1 - 0.02 - (1 - 0.5 - 0.02) * Math.exp(-Math.pow(10, 3.5 * decibels / 20));
        return outcome == CORRECT ? correct : 1 - correct;
    }

    /** Which of the 32 answers were wrong, counted from 0. */
    private static final Set<Integer> WRONG = Set.of(4, 5, 14, 17, 20);

    @Test
    void asksThePapersContrastsAndEndsAtItsThreshold() {
        QuestPlus quest = QuestPlus.of(Belief.even(COUNT), QuestPlusTest::weibull, 2);
        List<Integer> asked = new ArrayList<>();
        for (int i = 0; i < CONTRASTS.length; i++) {
            int next = quest.next(COUNT);
            asked.add(next + LOWEST);
            quest = quest.after(next, WRONG.contains(i) ? 0 : CORRECT);
        }

        assertThat(asked)
                .containsExactlyElementsOf(Arrays.stream(CONTRASTS).boxed().toList());
        assertThat(quest.belief().mode() + LOWEST).isEqualTo(-20);
    }

    /** Worked by hand: a test that tells two of four hypotheses from the other two leaves one bit of two. */
    @Test
    void entropyIsInBits() {
        Likelihood halves = (test, outcome, hypothesis) -> hypothesis / 2 == outcome ? 1 : 0;
        QuestPlus quest = QuestPlus.of(Belief.even(4), halves, 2);

        assertThat(quest.entropy()).isEqualTo(2, within(1e-12));
        assertThat(quest.expectedEntropy(0)).isEqualTo(1, within(1e-12));
        assertThat(quest.after(0, 1).belief().of(3)).isEqualTo(0.5, within(1e-12));
    }

    @Test
    void whatOnlyTellsHypothesesOfOneClassApartIsWorthNothing() {
        Likelihood within = (test, outcome, hypothesis) -> hypothesis % 2 == outcome ? 1 : 0;
        Likelihood between = (test, outcome, hypothesis) -> hypothesis / 2 == outcome ? 1 : 0;
        Likelihood both = (test, outcome, hypothesis) ->
                test == 0 ? within.of(0, outcome, hypothesis) : between.of(0, outcome, hypothesis);
        QuestPlus quest = QuestPlus.ofClasses(Belief.even(4), both, 2, new int[] {0, 0, 1, 1}, 2);

        assertThat(quest.entropy()).isEqualTo(1, within(1e-12));
        assertThat(quest.expectedEntropy(0)).isEqualTo(1, within(1e-12));
        assertThat(quest.expectedEntropy(1)).isEqualTo(0, within(1e-12));
        assertThat(quest.next(2)).isEqualTo(1);
    }

    @Test
    void whatNothingExplainsChangesNothing() {
        Belief belief = Belief.of(1, 3);

        assertThat(belief.of(1)).isEqualTo(0.75);
        assertThat(belief.after(hypothesis -> 0)).isSameAs(belief);
        assertThatThrownBy(() -> Belief.of(0, 0)).hasMessageContaining("not all of them 0");
        assertThatThrownBy(() -> Belief.of(1, -1)).isInstanceOf(IllegalArgumentException.class);
    }
}
