package bootmend.view;

import bootmend.CardException;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.BootTables;
import bootmend.boot.Depth;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.request.RequestedBoard;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.workplace.Workplace;
import java.io.IOException;

/** Works out why a card does or does not boot, and writes nothing. */
public final class DiagnoseJob {

    private final Workplace workplace;

    public DiagnoseJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /**
     * Looks into every boot file that the boards take.
     *
     * @param about what is known about the board; where it names none, every board that the card can be meant for
     * @throws CardException of kind usage where what is said about the board makes no sense; of kind unreadable where no
     *     boot partition is found
     */
    public BootDiagnosis run(CardRequest request, BoardRequest about) throws CardException {
        BoardFacts facts = new RequestedBoard(workplace.tables()).facts(about);
        try (OpenCard card = OpenCard.open(workplace.opener(), request, false)) {
            BootTables tables = new BootTables(workplace.tables());
            BootDiagnosis found = BootDiagnosis.of(card.bootCard(), facts, tables, Depth.CONTENTS);
            return new RepairOutlook(facts, tables, workplace.now()).of(card, found);
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }
}
