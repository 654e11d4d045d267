package bootmend.batch;

import bootmend.CardException;
import bootmend.finding.Purpose;
import bootmend.finding.Severity;
import bootmend.operation.ChangeOperation;
import bootmend.operation.ChangeOrder;
import bootmend.operation.Made;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.view.CheckJob;
import bootmend.view.CheckRequest;
import bootmend.view.CheckView;
import bootmend.workplace.Workplace;

/** What a station does with each card; one card at a time. */
@FunctionalInterface
public interface StationWork {

    /** How the work on one card ended, and a whole sentence about it. */
    record Result(StationTurn.Outcome outcome, String words) {}

    /** @throws CardException when it could not be done, which ends this card's turn alone */
    Result on(CardRequest card) throws CardException;

    /** Makes the same change on each card. */
    static StationWork change(Workplace workplace, ChangeOrder order) {
        ChangeOperation operation = new ChangeOperation(workplace);
        return card -> operation
                .make(card, order, ChangeOperation.Approval.GIVEN)
                .orThrow()
                .ifMade()
                .map(made -> new Result(StationTurn.Outcome.DONE, words(made)))
                .orElse(new Result(StationTurn.Outcome.NOTHING_TO_DO, "There is nothing to do on it."));
    }

    /** Checks each card for a purpose. */
    static StationWork check(Workplace workplace, Purpose purpose) {
        return card -> {
            CheckView view = new CheckJob(workplace).run(new CheckRequest(card, purpose, BoardRequest.none()));
            String words = view.count(Severity.BLOCKER) + " blockers, " + view.count(Severity.WARNING) + " warnings, "
                    + view.count(Severity.NOTE) + " notes.";
            return new Result(view.hasBlocker() ? StationTurn.Outcome.NOT_READY : StationTurn.Outcome.DONE, words);
        };
    }

    private static String words(Made made) {
        return made.match(new Made.Cases<>() {
            @Override
            public String onCard(Made.OnCard done) {
                return "Written, synced and read back; undo record " + done.record() + ".";
            }

            @Override
            public String inFolder(Made.InFolder done) {
                return "Written and read back, still mounted: eject it first; undo record " + done.record() + ".";
            }

            @Override
            public String inFile(Made.InFile done) {
                return "Written and read back: " + done.file() + ".";
            }

            @Override
            public String closed(Made.Closed done) {
                return "Nothing of the interrupted change stood on it; nothing was written.";
            }
        });
    }
}
