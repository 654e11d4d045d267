package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.card.CardListing;
import bootmend.card.CardSettings;
import bootmend.card.ConfigFile;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.change.FileChange;
import bootmend.change.FilePlanner;
import bootmend.change.Plan;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigName;
import bootmend.finding.Finding;
import bootmend.profile.ProfileEdit;
import bootmend.record.TrialSettings;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.request.RequestedBoard;
import bootmend.tuning.Board;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.view.CardReads;
import bootmend.view.CardViews;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Stages a trial that heals itself: {@code tryboot.txt} with the trial's settings, which a board reads once when it is
 * restarted with its try-once flag; any start after that reads the config file again.
 *
 * <p>Source: "autoboot.txt", config_txt/autoboot.adoc, commit 04d84a86.
 */
public final class StageJob {

    /** The file that a try-once start reads in place of the config file. */
    private static final String STAGED = ConfigName.TRY_ONCE;

    private static final int MOST_BYTES = ConfigFiles.MAX_BYTES;

    private final Workplace workplace;

    public StageJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /** The command that restarts a board with its try-once flag, as its maker documents it. */
    public static String restartCommand() {
        return "sudo reboot '0 tryboot'";
    }

    /** Works out how the settings are staged; {@code forChanging} holds the card locked for {@code apply}. */
    public ProposedChange stage(CardRequest request, StageRequest wanted, boolean forChanging) throws CardException {
        Board board = new RequestedBoard(workplace.tables())
                .facts(BoardRequest.of(wanted.board()))
                .board()
                .orElseThrow();
        if (!board.knowsTryOnce()) {
            throw CardException.refused(
                    board.id() + " has no try-once start",
                    "Only the pi4 family and later have one; on " + board.id() + " keep a copy of the card and edit "
                            + "its config file.");
        }
        Map<String, Long> named = new TrialSettings(workplace).named(wanted.settings());
        if (named.isEmpty()) {
            throw CardException.usage("there is nothing to stage", "", NextStep.Plain.GIVE_SETTINGS);
        }
        return propose(request, forChanging, wanted.inPlace(), "stage settings for one try", card -> {
            refuseWhenSwitching(card);
            ConfigFiles files = ConfigFiles.read(card.volume());
            ResetJob.refuseWhenNotWhole(files.main());
            byte[] staged =
                    staged(card, files, board, named, wanted.despiteBlockers()).toBytes();
            return new Changes(
                    List.of(new FileChange(STAGED, content(card), staged)),
                    List.of(new FileChange(STAGED, files.main().bytes(), staged)));
        });
    }

    /** Works out how a staged trial is removed. */
    public ProposedChange unstage(CardRequest request, boolean forChanging) throws CardException {
        return propose(
                request,
                forChanging,
                false,
                "remove the staged settings",
                card -> new Changes(List.of(new FileChange(STAGED, stagedContent(card), null)), List.of()));
    }

    /** Works out how a staged trial becomes the config file. */
    public ProposedChange adopt(CardRequest request, boolean forChanging, boolean inPlace) throws CardException {
        return propose(request, forChanging, inPlace, "keep the staged settings", card -> {
            byte[] staged = stagedContent(card);
            ConfigFile config = ConfigFiles.read(card.volume()).main();
            ResetJob.refuseWhenNotWhole(config);
            FileChange adopted = new FileChange(ConfigFiles.NAME, config.bytes(), staged);
            return new Changes(List.of(adopted, new FileChange(STAGED, staged, null)), List.of(adopted));
        });
    }

    /**
     * What becomes of files on a card.
     *
     * @param shown the two texts whose lines a user is shown beside each other
     */
    private record Changes(List<FileChange> made, List<FileChange> shown) {}

    /** Works out what becomes of files on a card. */
    @FunctionalInterface
    private interface Work {
        Changes on(OpenCard card) throws CardException, IOException;
    }

    private ProposedChange propose(CardRequest request, boolean forChanging, boolean inPlace, String title, Work work)
            throws CardException {
        OpenCard card = OpenCard.open(workplace.opener(), request, forChanging);
        try {
            RecoverJob.refuseWhenWaiting(card, workplace);
            FilePlanner planner = card.planner(workplace, inPlace);
            Changes changes = work.on(card);
            for (FileChange change : changes.made()) {
                planner.put(change);
            }
            Plan plan = planner.plan(title);
            return new ProposedChange(
                    card,
                    new CardViews(workplace).of(card),
                    LineDiff.of(changes.shown()),
                    plan,
                    () -> card.commit(workplace, plan));
        } catch (CardException | IOException | RuntimeException e) {
            throw ResetJob.closing(card, e);
        }
    }

    /** The config file's text with the trial's settings; what the card sets on the board besides stays. */
    private ConfigDocument staged(
            OpenCard card, ConfigFiles files, Board board, Map<String, Long> named, boolean despiteBlockers)
            throws CardException, IOException {
        Map<String, String> settings = new LinkedHashMap<>(new CardSettings(workplace.tables()).of(files, board));
        named.forEach((key, value) -> settings.put(key, Long.toString(value)));
        Map<String, ConfigDocument> edited = new ProfileEdit(workplace.tables(), board, files::pathOf)
                .apply(files.main().path(), files.main().document(), files.includes(), settings);
        for (ConfigFile file : files.all()) {
            if (!file.path().equals(files.main().path())
                    && !edited.getOrDefault(file.path(), file.document()).equals(file.document())) {
                throw CardException.refused(
                        "a setting stands in " + file.path() + ", which " + ConfigFiles.NAME + " and " + STAGED
                                + " would both include",
                        "Move the tuning lines from " + file.path() + " into " + ConfigFiles.NAME + " first.");
            }
        }
        if (!despiteBlockers) {
            refuseBlockers(card, board, edited);
        }
        return edited.get(files.main().path());
    }

    private void refuseBlockers(OpenCard card, Board board, Map<String, ConfigDocument> edited)
            throws CardException, IOException {
        List<Finding> blockers = new NewBlockers(workplace.tables(), BoardFacts.of(board))
                .of(new CardReads(workplace.store()).read(card, CardListing.of(card.volume())), edited);
        NewBlockers.refuse(blockers, "staged");
    }

    private static void refuseWhenSwitching(OpenCard card) throws CardException {
        if (card.switchesPartition()) {
            throw CardException.refused(
                    "this card switches whole partitions on a try-once start (tryboot_a_b=1)",
                    "A staged file would not be read.",
                    NextStep.Plain.TAKE_OTHER_PARTITION);
        }
    }

    private static byte[] stagedContent(OpenCard card) throws CardException, IOException {
        byte[] content = content(card);
        if (content == null) {
            throw CardException.refused("no settings are staged on this card", "", NextStep.Plain.STAGE_SETTINGS);
        }
        return content;
    }

    /** The staged file's content; null where none is staged. */
    private static byte[] content(OpenCard card) throws CardException, IOException {
        var entry = card.volume().find(STAGED);
        if (entry.isEmpty()) {
            return null;
        }
        var content = card.volume().read(entry.get(), MOST_BYTES);
        if (entry.get().folder() || entry.get().size() > MOST_BYTES || !content.isWhole()) {
            throw CardException.refused(
                    STAGED + " on this card cannot be read as a config file",
                    "Have the card examined for damage, or remove the file by hand.",
                    NextStep.Plain.REPAIR_CARD);
        }
        return content.bytes();
    }
}
