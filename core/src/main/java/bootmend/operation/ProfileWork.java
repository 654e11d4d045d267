package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep.Allow;
import bootmend.card.ConfigFile;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.change.FilePlanner;
import bootmend.change.Plan;
import bootmend.config.ConfigDocument;
import bootmend.profile.Profile;
import bootmend.profile.ProfileEdit;
import bootmend.request.BoardRequest;
import bootmend.request.RequestedBoard;
import bootmend.trial.Standing;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import bootmend.view.CardViews;
import java.io.IOException;
import java.util.List;
import java.util.Map;

/** Makes a card's tuning lines exactly a profile's, for its board. */
record ProfileWork(Work work, ChangeRequest.ToProfile request) implements WorkOut {

    @Override
    public Worked on(OpenCard card) throws CardException, IOException {
        Profile profile = work.workplace().profiles().load(request.name());
        Board board = board(profile);
        ConfigFiles files = ConfigFiles.read(card.volume());
        Map<String, ConfigDocument> edited = new ProfileEdit(tables(), board, files::pathOf)
                .apply(files.main().path(), files.main().document(), files.includes(), profile.settings());
        new NewBlockers(work, board).refuse(card, edited, "put there");
        return Worked.of(new CardViews(work.workplace()).of(card, files), plan(card, files, edited, profile))
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

    private Plan plan(OpenCard card, ConfigFiles files, Map<String, ConfigDocument> edited, Profile profile)
            throws CardException, IOException {
        FilePlanner planner = work.planner(card);
        for (ConfigFile file : files.all()) {
            file.refuseWhenNotWhole();
            ConfigDocument after = edited.getOrDefault(file.path(), file.document());
            planner.replace(file.path(), file.entry(), file.bytes(), after.toBytes());
        }
        return planner.plan("profile " + profile.name());
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
