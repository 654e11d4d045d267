package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.card.CardListing;
import bootmend.card.ConfigFile;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.change.FilePlanner;
import bootmend.change.Plan;
import bootmend.config.ConfigDocument;
import bootmend.finding.Finding;
import bootmend.profile.Profile;
import bootmend.profile.ProfileEdit;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.request.RequestedBoard;
import bootmend.trial.Verdict;
import bootmend.tuning.Board;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.view.CardReads;
import bootmend.view.CardViews;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Makes a card's tuning lines exactly a profile's, for its board. */
public final class PutProfileJob {

    private final Workplace workplace;

    public PutProfileJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /** Works the change out on a card that is only read; it cannot be applied. */
    public ProposedChange preview(CardRequest request, ProfileRequest wanted) throws CardException {
        return propose(request, wanted, false);
    }

    /** Works the change out on a card that stays locked until the proposal is closed. */
    public ProposedChange begin(CardRequest request, ProfileRequest wanted) throws CardException {
        return propose(request, wanted, true);
    }

    private ProposedChange propose(CardRequest request, ProfileRequest wanted, boolean forChanging)
            throws CardException {
        Profile profile = workplace.profiles().load(wanted.name());
        Board board = board(profile, wanted);
        OpenCard card = OpenCard.open(workplace.opener(), request, forChanging);
        try {
            RecoverJob.refuseWhenWaiting(card, workplace);
            ConfigFiles files = ConfigFiles.read(card.volume());
            Map<String, ConfigDocument> edited = new ProfileEdit(workplace.tables(), board, files::pathOf)
                    .apply(files.main().path(), files.main().document(), files.includes(), profile.settings());
            refuseBlockers(card, board, edited, wanted);
            Plan plan = plan(card, files, edited, profile, wanted.inPlace());
            return new ProposedChange(
                    card,
                    new CardViews(workplace).of(card, files),
                    LineDiff.of(plan.files()),
                    List.of(),
                    questions(profile),
                    plan,
                    () -> card.commit(workplace, plan));
        } catch (CardException | IOException | RuntimeException e) {
            throw ResetJob.closing(card, e);
        }
    }

    private Board board(Profile profile, ProfileRequest wanted) throws CardException {
        String id = wanted.board().orElse(profile.board());
        if (!id.equals(profile.board()) && !wanted.otherBoard()) {
            throw CardException.refused(
                    "the profile " + profile.name() + " is for " + profile.board() + ", not for " + id,
                    "Settings that hold on one board prove nothing for another, which may not boot with them.",
                    NextStep.Allow.OTHER_BOARD);
        }
        BoardFacts facts = new RequestedBoard(workplace.tables()).facts(BoardRequest.of(id));
        return facts.board().orElseThrow();
    }

    private void refuseBlockers(OpenCard card, Board board, Map<String, ConfigDocument> edited, ProfileRequest wanted)
            throws CardException, IOException {
        if (wanted.despiteBlockers()) {
            return;
        }
        List<Finding> blockers = new NewBlockers(workplace.tables(), BoardFacts.of(board))
                .of(new CardReads(workplace.store()).read(card, CardListing.of(card.volume())), edited);
        NewBlockers.refuse(blockers, "put there");
    }

    private Plan plan(
            OpenCard card, ConfigFiles files, Map<String, ConfigDocument> edited, Profile profile, boolean inPlace)
            throws CardException, IOException {
        FilePlanner planner = card.planner(workplace, inPlace);
        for (ConfigFile file : files.all()) {
            ResetJob.refuseWhenNotWhole(file);
            ConfigDocument after = edited.getOrDefault(file.path(), file.document());
            planner.replace(file.path(), file.entry(), file.bytes(), after.toBytes());
        }
        return planner.plan("profile " + profile.name());
    }

    private static List<String> questions(Profile profile) {
        List<String> questions = new ArrayList<>();
        if (!profile.isKnownGood()) {
            questions.add("The profile " + profile.name() + " is unproven: no trial of at least "
                    + (int) Verdict.KNOWN_GOOD_MINUTES + " minutes under full load without a throttle bit backs it.");
        }
        return questions;
    }
}
