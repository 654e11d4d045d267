package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.change.OpenChange;
import bootmend.change.Recovery;
import bootmend.request.CardRequest;
import bootmend.view.RecoveryView;
import bootmend.workplace.Workplace;
import java.io.IOException;

/** Completes or reverses a change that was cut short. */
public final class RecoverJob {

    private final Workplace workplace;

    public RecoverJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /** Opens the card for changing and looks for a change that waits on it. */
    public OpenRecovery begin(CardRequest request) throws CardException {
        OpenCard card = OpenCard.open(workplace.opener(), request, true);
        try {
            Recovery recovery = card.recovery(workplace.store());
            return new OpenRecovery(card, recovery, recovery.find());
        } catch (CardException | IOException | RuntimeException e) {
            throw closing(card, e);
        }
    }

    /** Refuses to change a card on which a cut change waits. */
    static void refuseWhenWaiting(OpenCard card, Workplace workplace) throws CardException, IOException {
        var waiting = card.waiting(workplace.store())
                .filter(change ->
                        change.extent() == OpenChange.Extent.PART || change.extent() == OpenChange.Extent.ALL);
        if (waiting.isPresent()) {
            throw CardException.cutShort(
                    "a change to this card (\"" + waiting.get().record().plan().title()
                            + "\") was cut short and waits for recovery: " + RecoveryView.words(waiting.get()),
                    "",
                    null,
                    NextStep.RecoverCard.of(waiting.get().record().file()));
        }
    }

    private static CardException closing(OpenCard card, Exception e) {
        try {
            card.close();
        } catch (IOException closing) {
            e.addSuppressed(closing);
        }
        if (e instanceof RuntimeException unexpected) {
            throw unexpected;
        }
        return e instanceof CardException told ? told : JobErrors.unreadable((IOException) e);
    }
}
