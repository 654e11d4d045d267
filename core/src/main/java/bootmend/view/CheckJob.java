package bootmend.view;

import bootmend.CardException;
import bootmend.boot.Depth;
import bootmend.card.CardListing;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.check.CardContent;
import bootmend.check.CardContents;
import bootmend.check.CardRead;
import bootmend.check.Checker;
import bootmend.request.RequestedBoard;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.time.temporal.ChronoUnit;

/** Checks a card for a purpose and writes nothing. */
public final class CheckJob {

    private final Workplace workplace;

    public CheckJob(Workplace workplace) {
        this.workplace = workplace;
    }

    public CheckView run(CheckRequest request) throws CardException {
        BoardFacts facts = new RequestedBoard(workplace.tables()).facts(request.board());
        try (OpenCard card = OpenCard.open(workplace.opener(), request.card(), false)) {
            return check(card, request, facts);
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    private CheckView check(OpenCard card, CheckRequest request, BoardFacts facts) throws CardException, IOException {
        CardListing listing = CardListing.of(card.volume());
        CardRead read = new CardReads(workplace).read(card, listing, facts, Depth.CONTENTS);
        CardContent content = new CardContents(workplace.tables()).of(read, facts);
        return new CheckView(
                new CardViews(workplace).of(card),
                request.purpose(),
                content.boardIds(),
                facts.board().isPresent(),
                new Checker(workplace.tables()).check(content, request.purpose()),
                workplace.instant().truncatedTo(ChronoUnit.SECONDS));
    }
}
