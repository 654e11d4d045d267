package bootmend.batch;

import bootmend.CardException;
import bootmend.card.JobErrors;
import bootmend.finding.Purpose;
import bootmend.finding.Severity;
import bootmend.operation.ChangeView;
import bootmend.operation.ProfileRequest;
import bootmend.operation.ProposedChange;
import bootmend.operation.PutProfileJob;
import bootmend.operation.ResetJob;
import bootmend.operation.ResetRequest;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.view.CheckJob;
import bootmend.view.CheckRequest;
import bootmend.view.CheckView;
import bootmend.workplace.Workplace;
import java.io.IOException;

/** What a station does with each card; one card at a time. */
@FunctionalInterface
public interface StationWork {

    /** How the work on one card ended, and a whole sentence about it. */
    record Result(StationTurn.Outcome outcome, String words) {}

    /** @throws CardException when it could not be done, which ends this card's turn alone */
    Result on(CardRequest card) throws CardException;

    /** Puts each card back to stock. */
    static StationWork reset(Workplace workplace) {
        return card -> apply(new ResetJob(workplace).begin(card, ResetRequest.PLAIN));
    }

    /** Puts a profile on each card. */
    static StationWork reset(Workplace workplace, ProfileRequest profile) {
        return card -> apply(new PutProfileJob(workplace).begin(card, profile));
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

    private static Result apply(ProposedChange proposed) throws CardException {
        try (ProposedChange change = proposed) {
            if (change.isNothing()) {
                return new Result(StationTurn.Outcome.NOTHING_TO_DO, "There is nothing to do on it.");
            }
            ChangeView done = change.apply();
            return new Result(
                    StationTurn.Outcome.DONE,
                    "Written, forced and read back: " + change.plan().title() + "; undo record " + done.undoRecord()
                            + ".");
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }
}
