package bootmend.change;

import static bootmend.change.PlannedCard.NEW;
import static bootmend.change.PlannedCard.OLD;
import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.fat.FileContent;
import bootmend.fat.SectorChange;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A cut at any moment leaves the old file whole or the new one, and every other file untouched. */
class CutTest {

    /** Between two forces a disk may take sectors in any order: each subset of a step's sectors is a state to survive. */
    @ParameterizedTest
    @MethodSource("bootmend.change.PlannedCard#specs")
    void everySubsetOfEveryStepLeavesAWholeFile(FatSpec spec) throws CardException, IOException {
        PlannedCard card = PlannedCard.of(spec, builder -> builder);
        var others = card.otherFiles(card.disk());
        Plan plan = card.plan(OLD, NEW);
        SparseDisk done = card.disk().copy();
        boolean switched = false;
        for (PlanStep step : plan.steps()) {
            List<SectorChange> changes = step.changes();
            assertThat(changes).hasSizeLessThan(12);
            for (int subset = 0; subset < 1 << changes.size(); subset++) {
                SparseDisk cut = done.copy();
                for (int i = 0; i < changes.size(); i++) {
                    if ((subset >> i & 1) == 1) {
                        cut.patch(changes.get(i).offset(), changes.get(i).after());
                    }
                }
                boolean isNew = switched || step.kind() == PlanStep.Kind.COMMIT && subset == 1;
                FileContent config = card.read(cut, "config.txt");
                assertThat(config.bytes()).isEqualTo(isNew ? NEW : OLD);
                assertThat(config.warnings()).isEmpty();
                assertThat(card.otherFiles(cut)).isEqualTo(others);
            }
            changes.forEach(change -> done.patch(change.offset(), change.after()));
            switched |= step.kind() == PlanStep.Kind.COMMIT;
        }
    }
}
