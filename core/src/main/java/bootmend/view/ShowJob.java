package bootmend.view;

import bootmend.CardException;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.request.RequestedBoard;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.workplace.Workplace;
import java.io.IOException;

/** Looks at a card and writes nothing. */
public final class ShowJob {

    private final Workplace workplace;

    public ShowJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /** The card alone, whatever board it is for. */
    public CardView run(CardRequest request) throws CardException {
        try (OpenCard card = OpenCard.open(workplace.opener(), request, false)) {
            return new CardViews(workplace).of(card);
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    /**
     * The card, and what it comes to on the board that is asked about; where none is, on each board that it can be meant for.
     *
     * @throws CardException of kind usage where what is said about the board makes no sense
     */
    public ShowView run(CardRequest request, BoardRequest about) throws CardException {
        BoardFacts facts = new RequestedBoard(workplace.tables()).facts(about);
        try (OpenCard card = OpenCard.open(workplace.opener(), request, false)) {
            return new ShowViews(workplace).of(card, facts);
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }
}
