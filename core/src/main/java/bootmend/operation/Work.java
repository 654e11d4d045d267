package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep.Allow;
import bootmend.card.OpenCard;
import bootmend.change.FilePlanner;
import bootmend.workplace.Workplace;
import java.time.LocalDateTime;

/**
 * What every kind of request is worked out with.
 *
 * @param order what is wanted and which risks were taken
 * @param written the time that changed files get, local
 */
record Work(Workplace workplace, ChangeOrder order, LocalDateTime written) {

    /** Works files' changes out on a card; one on a full card is overwritten in place only where that was accepted. */
    FilePlanner planner(OpenCard card) throws CardException {
        return card.planner(written, order.accepts(Allow.IN_PLACE));
    }
}
