package bootmend.change;

import static bootmend.change.PlannedCard.NEW;
import static bootmend.change.PlannedCard.OLD;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.fat.SectorKind;
import bootmend.fixtures.FatSpec;
import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.util.Arrays;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ChangePlannerTest {

    @Test
    void countsSectorsByKind() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat32(66000).build(), builder -> builder);

        Plan plan = card.plan(OLD, NEW);

        assertThat(NEW).hasSize(3 * 512 - 296);
        assertThat(plan.sectorsByKind())
                .isEqualTo(
                        Map.of(SectorKind.DATA, 3, SectorKind.FAT, 4, SectorKind.DIRECTORY, 1, SectorKind.FS_INFO, 1));
        assertThat(plan.sectorsWritten()).isEqualTo(9);
        assertThat(plan.isInPlace()).isFalse();
        assertThat(plan.sectors().keySet())
                .allMatch(offset -> offset == PlannedCard.START + 512 || offset >= PlannedCard.START + 32 * 512);
    }

    @Test
    void fullVolumeIsOverwrittenInPlaceOnlyWhenThatIsAllowed() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat16(5000).build(), builder -> builder.fillUpTo(0));
        byte[] after = Arrays.copyOf(NEW, OLD.length);

        assertThatThrownBy(() -> card.plan(OLD, after)).isInstanceOfSatisfying(CardException.class, e -> {
            assertThat(e.kind()).isEqualTo(CardException.Kind.REFUSED);
            assertThat(e).hasMessageContaining("no free cluster").hasMessageContaining("overwritten in place");
            assertThat(e.steps()).containsExactly(NextStep.Allow.IN_PLACE);
        });

        Plan plan = card.plan(OLD, after, true);
        assertThat(plan.isInPlace()).isTrue();
        assertThat(plan.steps())
                .extracting(PlanStep::kind)
                .containsExactly(PlanStep.Kind.IN_PLACE, PlanStep.Kind.COMMIT);
        new Committer(new UndoStore(Jimfs.newFileSystem(Configuration.unix()).getPath("/home")), PlannedCard.CLOCK)
                .commit(card.target(card.disk()), plan);
        assertThat(card.read(card.disk(), "config.txt").bytes()).isEqualTo(after);
    }

    @Test
    void whatNoLongerFitsAFullVolumeIsRefused() throws IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat16(5000).build(), builder -> builder.fillUpTo(1));
        byte[] larger = new byte[OLD.length + 600];

        assertThatThrownBy(() -> card.plan(OLD, larger, true))
                .hasMessageContaining("does not fit")
                .isInstanceOfSatisfying(
                        CardException.class, e -> assertThat(e.steps()).isEmpty());
    }

    /** One free cluster is room enough for a file of one cluster. */
    @Test
    void theLastFreeClusterIsUsed() throws CardException, IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat16(5000).build(), builder -> builder.fillUpTo(1));

        assertThat(card.plan(OLD, Arrays.copyOf(NEW, 512)).isInPlace()).isFalse();
    }

    @Test
    void aDamagedChainIsNotReplaced() throws IOException {
        PlannedCard card = PlannedCard.of(FatSpec.fat16(5000).build(), builder -> builder);
        int[] chain = card.layout().chain("config.txt");
        card.layout().setFatEntries(card.disk(), chain[1], chain[0]);

        assertThatThrownBy(() -> card.plan(OLD, NEW))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("cannot be replaced safely");
    }
}
