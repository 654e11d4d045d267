package bootmend.job;

import bootmend.CardException;
import java.io.IOException;

/** Looks at a card and writes nothing. */
public final class ShowJob {

    private final Workplace workplace;

    public ShowJob(Workplace workplace) {
        this.workplace = workplace;
    }

    public CardView run(CardRequest request) throws CardException {
        try (OpenCard card = OpenCard.open(workplace.opener(), request, false)) {
            return new CardViews(workplace).of(card);
        } catch (CardException e) {
            throw e;
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }
}
