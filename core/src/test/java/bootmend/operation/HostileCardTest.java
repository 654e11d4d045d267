package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/**
 * Damaged cards by the hundred thousand: every job comes to an end in a bounded number of accesses, none of them long,
 * throws nothing but its own error, and writes nothing that it did not plan.
 *
 * <p>The system property {@code bootmend.hostile.cases} asks for more cases, {@code bootmend.hostile.seed} for another
 * first seed. A case that fails names its seed; it becomes a test of its own below.
 */
class HostileCardTest {

    private static final long CASES = Long.getLong("bootmend.hostile.cases", 100_000);
    private static final long FIRST_SEED = Long.getLong("bootmend.hostile.seed", 1);

    private final HostileCards cards = new HostileCards();
    private final List<HostileCards.Base> bases = HostileCards.bases();

    @Test
    void everyJobSurvivesEveryDamage() {
        long survived = LongStream.range(FIRST_SEED, FIRST_SEED + CASES)
                .parallel()
                .map(seed -> {
                    survives(seed);
                    return 1;
                })
                .sum();
        System.out.println("hostile cards tried: " + survived + "; shown: " + cards.shown() + "; reset: "
                + cards.changed() + "; the others ended in an error with its own words");
        assertThat(survived).isEqualTo(CASES);
        assertThat(cards.shown()).as("still read").isBetween(CASES / 10, CASES * 9 / 10);
        assertThat(cards.changed()).as("still reset").isBetween(CASES / 20, CASES * 9 / 10);
    }

    private void survives(long seed) {
        HostileCards.Base base = bases.get(Math.floorMod(seed, bases.size()));
        SparseDisk card = Mutation.of(base.disk(), base.regions(), seed);
        try {
            cards.survive(card);
        } catch (IOException | RuntimeException | Error e) {
            throw new AssertionError("seed " + seed + ": " + e, e);
        }
    }
}
