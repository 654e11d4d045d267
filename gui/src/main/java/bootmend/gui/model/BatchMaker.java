package bootmend.gui.model;

import bootmend.CardException;
import bootmend.batch.CardResult;
import bootmend.operation.CardChange;
import bootmend.operation.ProposedChange;
import bootmend.page.CardOutcome;
import bootmend.request.CardRequest;
import bootmend.view.ShowJob;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/** Makes on one card of many the change that was shown, and no other; several threads may use it. */
final class BatchMaker {

    private final Workplace workplace;
    private final Wish wish;

    BatchMaker(Workplace workplace, Wish wish) {
        this.workplace = workplace;
        this.wish = wish;
    }

    /**
     * A change that was made.
     *
     * @param now what the card is after it; empty where it could not be read once more
     */
    record Made(CardChange change, Optional<CardOutcome.Was> now) {}

    /** @param shown what was worked out for that card */
    Made make(Path card, CardChange shown) throws CardException {
        CardRequest request = CardRequest.of(card);
        CardChange change =
                CardChange.of(changing -> asShown(wish.propose(workplace, request, changing), shown), false);
        return new Made(change, now(request));
    }

    /** The change alone. */
    static CardResult<CardChange> change(CardResult<Made> result) {
        return new CardResult<>(
                result.card(), result.started(), result.view().map(Made::change), result.error(), result.took());
    }

    private static ProposedChange asShown(ProposedChange change, CardChange shown) throws CardException {
        ChangePreview before = new ChangePreview(
                shown.before(), shown.lines(), shown.findings(), shown.questions(), shown.plan(), shown.nothing());
        if (ChangePreview.of(change).isSameAs(before)) {
            return change;
        }
        try {
            change.close();
        } catch (IOException e) {
            throw refusal(e);
        }
        throw refusal(null);
    }

    private static CardException refusal(IOException cause) {
        return CardException.refused(
                "the card is not as it was when the change was worked out",
                "Look at it again: it may be another card, or something else wrote to it.",
                cause);
    }

    /** The change is made and read back by then, so a card that cannot be read once more has not failed. */
    private Optional<CardOutcome.Was> now(CardRequest card) {
        try {
            return CardOutcome.ofCard(new CardResult<>(
                            card.card(),
                            true,
                            Optional.of(new ShowJob(workplace).run(card)),
                            Optional.empty(),
                            Duration.ZERO))
                    .was();
        } catch (CardException e) {
            return Optional.empty();
        }
    }
}
