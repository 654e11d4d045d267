package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.finding.Finding;
import bootmend.finding.Fix;
import bootmend.finding.Place;
import bootmend.finding.Rule;
import bootmend.finding.Severity;
import bootmend.gui.SmallCards;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
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
    void damageThatNeedsNoGuessIsRepairedAndTheCardIsSoundAfter() throws IOException {
        CardModel card = open("config-utf16");
        assertThat(report(card).findings()).extracting(Finding::fix).containsExactly(Fix.REPAIR);
        assertThat(report(card).hasLost()).isFalse();

        card.change().choose(ChangeOrder.of(ChangeRequest.Repair.PLAIN));
        card.change().make();

        assertThat(card.change().state().get()).isInstanceOf(ChangeState.Done.class);
        assertThat(report(card).isSound()).isTrue();
    }

    @Test
    void clustersOfNoFileAreFreedOnlyWhenThatIsChosen() throws IOException {
        CardModel card = open("lost-clusters");
        assertThat(report(card).findings()).extracting(Finding::fix).containsExactly(Fix.DECISION, Fix.REPAIR);
        assertThat(report(card).canRepair()).isTrue();

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
        assertThat(report.canRepair()).isFalse();
    }

    @Test
    void aCardThatIsDamagedThroughAndThroughIsToldOfInPart() {
        List<Finding> many = Collections.nCopies(
                DamageReport.MOST + 7,
                Finding.of(
                        Rule.of("x", Rule.always(Severity.BLOCKER), Fix.NOTHING, "It matters."),
                        Place.file("a file"),
                        "It is."));
        DamageReport report = DamageReport.of(many);
        assertThat(report.findings()).hasSize(DamageReport.MOST);
        assertThat(report.unshown()).isEqualTo(7);
    }

    private CardModel open(String id) throws IOException {
        return new ModelDesk(folder.resolve("home")).open(SmallCards.writeDamaged(folder, id));
    }

    private static DamageReport report(CardModel card) {
        return DamageReport.of(card.health().get().value().orElseThrow().findings());
    }
}
