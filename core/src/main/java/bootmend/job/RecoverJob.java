package bootmend.job;

import bootmend.CardException;
import bootmend.change.Interruption;
import bootmend.change.OpenChange;
import bootmend.change.Recovery;
import bootmend.change.UndoRecord;
import bootmend.config.VisibleText;
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
        } catch (IOException | RuntimeException e) {
            throw ResetJob.closing(card, e);
        }
    }

    static RecoveryView view(OpenChange change) {
        OpenChange.Extent extent = change.extent();
        return new RecoveryView(
                change.record().plan().title(),
                change.record().created().truncatedTo(ChronoUnit.SECONDS),
                words(change),
                extent != OpenChange.Extent.FOREIGN,
                extent == OpenChange.Extent.NOTHING,
                change.committed(),
                change.record().file().toString());
    }

    private static String words(OpenChange change) {
        return switch (change.extent()) {
            case NOTHING -> "nothing of it stands on this card";
            case PART ->
                change.committed()
                        ? "the new content counts already, and cleaning up is left"
                        : "a part of it stands on this card, and the old content still counts";
            case ALL -> "all of it stands on this card, but it was not checked";
            case FOREIGN -> "this card was changed since, or it is another card of the same make-up";
        };
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
    static void refuseWhenWaiting(OpenCard card, Workplace workplace) throws IOException {
        Interruption found = card.waiting(workplace.store());
        if (found instanceof Interruption.Ambiguous ambiguous) {
            throw refusal(ambiguous);
        }
        var waiting = found.exact().filter(OpenChange::isBegun);
        if (waiting.isPresent()) {
            throw CardException.cutShort(
                    "a change to this card (\"" + waiting.get().record().plan().title()
                            + "\") was cut short and waits for recovery: " + words(waiting.get()),
                    "Run `bootmend recover` on it first; the undo record is "
                            + waiting.get().record().file() + ".",
                    null);
        }
    }
}
