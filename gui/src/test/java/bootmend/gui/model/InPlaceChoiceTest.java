package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.NextStep;
import bootmend.gui.SmallCards;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A full card's refusal, and the risk that a user may take to have the change all the same. */
class InPlaceChoiceTest {

    private static final ChangeOrder STOCK = ChangeOrder.of(ChangeRequest.ToStock.PLAIN);

    @TempDir
    private Path folder;

    @Test
    void aFullCardIsOverwrittenOnlyOnceTheRiskIsTaken() throws IOException {
        CardModel card = open(SmallCards.writeFull(folder, "full.img", "arm_freq=2000\n"));

        card.change().choose(STOCK);
        ChangeState.Failed refused = (ChangeState.Failed) card.change().state().get();
        assertThat(refused.error()).hasMessageContaining("no free cluster");
        assertThat(refused.despite()).contains(STOCK.accepting(NextStep.Allow.IN_PLACE));

        card.change().choose(refused.despite().orElseThrow());
        assertThat(((ChangeState.Proposed) card.change().state().get())
                        .change()
                        .plan()
                        .inPlace())
                .isTrue();

        card.change().make();
        assertThat(card.change().state().get()).isInstanceOf(ChangeState.Done.class);
        assertThat(card.sheet().get().value().orElseThrow().show().card().isStock())
                .isTrue();
    }

    @Test
    void otherRefusalsOfferNoRisk() throws IOException {
        CardModel card = open(SmallCards.write(folder, "lab.img", "arm_freq=2000\n"));
        card.change().choose(MadeChange.beforeTheFirst());
        card.change().choose(ChangeOrder.of(new ChangeRequest.Adopt()));
        assertThat(((ChangeState.Failed) card.change().state().get()).despite()).isEmpty();
    }

    private CardModel open(Path card) {
        return new ModelDesk(folder.resolve("home")).open(card);
    }
}
