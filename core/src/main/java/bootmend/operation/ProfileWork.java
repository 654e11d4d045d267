package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep.Allow;
import bootmend.card.OpenCard;
import bootmend.profile.Profile;
import bootmend.request.BoardRequest;
import bootmend.request.RequestedBoard;
import bootmend.trial.Standing;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import java.io.IOException;
import java.util.List;

/** Makes a card's tuning lines exactly a profile's, for its board. */
record ProfileWork(Work work, ChangeRequest.ToProfile request) implements WorkOut {

    @Override
    public Worked on(OpenCard card) throws CardException, IOException {
        Profile profile = work.workplace().profiles().load(request.name());
        return new SettingsPut(work, board(profile), profile.settings(), "profile " + profile.name())
                .on(card)
                .asking(questions(profile));
    }

    private Board board(Profile profile) throws CardException {
        String id = request.board().orElse(profile.board());
        if (!id.equals(profile.board()) && !work.order().accepts(Allow.OTHER_BOARD)) {
            throw CardException.refused(
                    "the profile " + profile.name() + " is for " + profile.board() + ", not for " + id,
                    "Settings that hold on one board prove nothing for another, which may not boot with them.",
                    Allow.OTHER_BOARD);
        }
        return new RequestedBoard(tables()).facts(BoardRequest.of(id)).board().orElseThrow();
    }

    private static List<String> questions(Profile profile) {
        return profile.isKnownGood()
                ? List.of()
                : List.of("The profile " + profile.name() + " is unproven: no trial of at least "
                        + (int) Standing.KNOWN_GOOD_MINUTES
                        + " minutes under full load without a throttle bit backs it.");
    }

    private TuningTables tables() {
        return work.workplace().tables();
    }
}
