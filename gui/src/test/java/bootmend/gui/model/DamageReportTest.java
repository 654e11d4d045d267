package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.gui.SmallCards;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.operation.FindingView;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What becomes of each damage, and what is offered. */
class DamageReportTest {

    @TempDir
    private Path folder;

    @Test
    void damageThatNeedsNoGuessIsMendedAndTheCardIsSoundAfter() throws IOException {
        CardModel card = open("config-utf16");
        assertThat(report(card).findings())
                .extracting(DamageReport.Row::fate)
                .containsExactly(DamageReport.Fate.MENDED);
        assertThat(report(card).hasLost()).isFalse();

        card.change().choose(ChangeOrder.of(ChangeRequest.Repair.PLAIN));
        card.change().make();

        assertThat(card.change().state().get()).isInstanceOf(ChangeState.Done.class);
        assertThat(report(card).isSound()).isTrue();
    }

    @Test
    void clustersOfNoFileAreFreedOnlyWhenThatIsChosen() throws IOException {
        CardModel card = open("lost-clusters");
        assertThat(report(card).findings())
                .extracting(DamageReport.Row::fate)
                .containsExactly(DamageReport.Fate.ASKED, DamageReport.Fate.MENDED);
        assertThat(report(card).canMend()).isTrue();

        card.change().choose(ChangeOrder.of(ChangeRequest.Repair.PLAIN));
        card.change().make();
        assertThat(report(card).hasLost()).isTrue();

        card.change().choose(ChangeOrder.of(new ChangeRequest.Repair(true)));
        card.change().make();
        assertThat(report(card).isSound()).isTrue();
    }

    @Test
    void whatWouldBeGuessingStays() throws IOException {
        DamageReport report = report(open("duplicate-names"));
        assertThat(report.leaves()).isTrue();
        assertThat(report.canMend()).isFalse();
    }

    @Test
    void aCardThatIsDamagedThroughAndThroughIsToldOfInPart() {
        List<FindingView> many =
                Collections.nCopies(DamageReport.MOST + 7, new FindingView("x", "a file", "it is", false));
        DamageReport report = DamageReport.of(many);
        assertThat(report.findings()).hasSize(DamageReport.MOST);
        assertThat(report.unshown()).isEqualTo(7);
    }

    private CardModel open(String id) throws IOException {
        return new ModelBench(folder.resolve("home")).open(SmallCards.writeDamaged(folder, id));
    }

    private static DamageReport report(CardModel card) {
        return DamageReport.of(card.health().get().value().orElseThrow().findings());
    }
}
