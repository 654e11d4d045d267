package bootmend.change;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import java.io.IOException;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Three cards written from one image and a stranger behind one path, and every sequence of up to five things that can be
 * done with them: change the card, reset, reset or repair cut at and in each step, undo, recover with each answer, forget.
 *
 * <p>After each, every card is old, new or recoverable, none was written by a sister's record, and no record of a torn
 * card is lost. Sequences that come to the same cards with the same records are followed once, and so are those that
 * differ only in which of the three sisters is which; the number printed counts each of them.
 *
 * <p>The system property {@code bootmend.sisters.length} asks for longer sequences; the world in which changes are seconds
 * apart is followed for one less than the others, as it takes as long and tells cards apart more often.
 */
class SistersModelTest {

    private static final int MORE = Integer.getInteger("bootmend.sisters.length", 0);

    /** What tells the cards apart. */
    enum World {
        /** Each card has a register of its own that the system reads. */
        KEYED(true, false, 5),
        /** Nothing but what stands on them, and everything happens within the same two seconds. */
        ALIKE(false, false, 5),
        /** Nothing but what stands on them, but changes are some seconds apart. */
        SECONDS_APART(false, true, 4);

        final boolean keyed;
        final boolean ticking;
        final int length;

        World(boolean keyed, boolean ticking, int length) {
            this.length = Math.max(length, MORE);
            this.keyed = keyed;
            this.ticking = ticking;
        }
    }

    @ParameterizedTest
    @EnumSource
    void everySequenceKeepsEveryCardAndEveryRecord(World world) throws CardException, IOException {
        Map<String, Counted> level = new LinkedHashMap<>();
        SistersModel start = SistersModel.start(world.keyed, world.ticking);
        level.put(start.key(), new Counted(start, 1, ""));
        Map<String, Integer> outcomes = new HashMap<>();
        long sequences = 0;
        long states = 1;
        long steps = 0;
        for (int length = 1; length <= world.length; length++) {
            Map<String, Counted> next = new LinkedHashMap<>();
            for (Counted reached : level.values()) {
                for (SistersModel.Step step : reached.model.steps()) {
                    SistersModel after = take(reached, step, outcomes);
                    sequences += reached.ways;
                    steps++;
                    if (length < world.length) {
                        next.computeIfAbsent(after.key(), key -> new Counted(after, 0, reached.way + " " + step))
                                .ways += reached.ways;
                    }
                }
            }
            states += next.size();
            level = next;
        }
        System.out.println("sister cards, " + world + ": " + sequences + " sequences of up to " + world.length + ", by "
                + steps + " steps from " + states + " different states; " + outcomes);
        assertThat(sequences).isGreaterThan(world.length < 5 ? 30_000 : 500_000);
        assertThat(outcomes).containsKeys("finished", "undone", "forgotten", "cut", "recover: Elsewhere");
        assertThat(outcomes.containsKey("recover: Ambiguous")).isEqualTo(!world.keyed);
    }

    private static SistersModel take(Counted reached, SistersModel.Step step, Map<String, Integer> outcomes)
            throws CardException, IOException {
        try {
            return reached.model.take(step, outcomes);
        } catch (IOException | RuntimeException | AssertionError e) {
            throw new AssertionError(reached.way + " " + step + ": " + e, e);
        }
    }

    private static final class Counted {
        private final SistersModel model;
        private final String way;
        private long ways;

        Counted(SistersModel model, long ways, String way) {
            this.way = way;
            this.model = model;
            this.ways = ways;
        }
    }
}
