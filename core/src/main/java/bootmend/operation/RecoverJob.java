package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.change.Interruption;
import bootmend.change.OpenChange;
import bootmend.change.Recovery;
import bootmend.change.UndoRecord;
import bootmend.config.VisibleText;
import bootmend.request.CardRequest;
import bootmend.view.RecoveryView;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.time.temporal.ChronoUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;

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
            Interruption found = recovery.look();
            if (found instanceof Interruption.Ambiguous ambiguous) {
                throw refusal(ambiguous);
            }
            return new OpenRecovery(card, recovery, found);
        } catch (CardException | IOException | RuntimeException e) {
            throw closing(card, e);
        }
    }

    private static CardException refusal(Interruption.Ambiguous ambiguous) {
        Stream<UndoRecord> could =
                Stream.concat(ambiguous.candidates().stream().map(OpenChange::record), ambiguous.others().stream());
        String names = could.map(record -> "\"" + VisibleText.of(record.plan().title()) + "\" of "
                        + record.created().truncatedTo(ChronoUnit.SECONDS) + " at " + VisibleText.of(record.cardPath())
                        + " (" + record.file() + ")")
                .collect(Collectors.joining(", "));
        return CardException.refused(
                "a change to this card or to another written from the same image was cut short, and it cannot be told "
                        + "to which: " + names,
                "Nothing was written. Recover the other cards first, each where it was changed; the record that is left "
                        + "then is this card's.");
    }

    /** Refuses to change a card on which a cut change waits. */
    static void refuseWhenWaiting(OpenCard card, Workplace workplace) throws CardException, IOException {
        Interruption found = card.waiting(workplace.store());
        if (found instanceof Interruption.Ambiguous ambiguous) {
            throw refusal(ambiguous);
        }
        var waiting = found.exact().filter(OpenChange::isBegun);
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
