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
import bootmend.view.RecordedChange;
import bootmend.view.RecoveryView;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Completes or reverses a change that was interrupted. */
public final class RecoverJob {

    private final Workplace workplace;

    public RecoverJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /** Opens the card for changing and looks for a change that waits on it. */
    public OpenRecovery begin(CardRequest request) throws CardException {
        return begin(request, Optional.empty());
    }

    /**
     * The same where a user says which change is this card's.
     *
     * @param record the id of one that may be; where it cannot be, that is refused
     */
    public OpenRecovery begin(CardRequest request, Optional<String> record) throws CardException {
        OpenCard card = OpenCard.open(workplace.opener(), request, true);
        try {
            Recovery recovery = card.recovery(workplace.store());
            Interruption found = recovery.look();
            if (record.isPresent()) {
                Optional<OpenChange> named = recovery.named(record.get());
                if (named.isEmpty()) {
                    throw CardException.refused(
                            "the change " + VisibleText.of(record.get())
                                    + " is not one that may have been made to this card",
                            "Nothing was written. Recover without naming one to see which there are.");
                }
                return new OpenRecovery(card, recovery, found, named);
            }
            if (found instanceof Interruption.Ambiguous ambiguous) {
                throw refusal(ambiguous);
            }
            return new OpenRecovery(card, recovery, found, found.exact());
        } catch (CardException | IOException | RuntimeException e) {
            throw closing(card, e);
        }
    }

    /**
     * Puts the record of an interrupted change away, whose card is gone; it is kept, and never offered again.
     *
     * @param record its id, or where it lies
     */
    public RecordedChange forget(String record) throws CardException {
        try {
            for (UndoRecord open : workplace.store().open()) {
                if (open.id().equals(record)
                        || open.file().equals(Path.of(record).toAbsolutePath().normalize())) {
                    return RecordedChange.of(workplace.store().forget(open.id()));
                }
            }
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        } catch (InvalidPathException e) {
            throw noRecord(record);
        }
        throw noRecord(record);
    }

    private static CardException noRecord(String record) {
        return CardException.usage(
                "no interrupted change has the record " + VisibleText.of(record),
                "Its id is what stands in its file's name behind the underscore.");
    }

    private static CardException refusal(Interruption.Ambiguous ambiguous) {
        Stream<UndoRecord> could =
                Stream.concat(ambiguous.candidates().stream().map(OpenChange::record), ambiguous.others().stream());
        String names = could.map(
                        record -> VisibleText.of(RecordedChange.of(record).words()))
                .collect(Collectors.joining(", "));
        return CardException.refused(
                "a change to this card or to another written from the same image was interrupted, and it cannot be told "
                        + "to which: " + names,
                "Nothing was written. Where there are other cards, recover those first, each where it was changed; the one that "
                        + "is left then is this card's.",
                NextStep.Plain.NAME_RECORD);
    }

    /** Refuses to change a card on which a cut change waits. */
    static void refuseWhenWaiting(OpenCard card, Workplace workplace) throws CardException, IOException {
        Interruption found = card.waiting(workplace.store());
        if (found instanceof Interruption.Ambiguous ambiguous) {
            throw refusal(ambiguous);
        }
        var waiting = found.exact().filter(OpenChange::isBegun);
        if (waiting.isPresent()) {
            throw CardException.interrupted(
                    "a change to this card (\"" + waiting.get().record().plan().title()
                            + "\") was interrupted and waits for recovery: " + RecoveryView.words(waiting.get()),
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
