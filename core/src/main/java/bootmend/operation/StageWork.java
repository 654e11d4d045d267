package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.card.CardSettings;
import bootmend.card.ConfigFile;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.change.FileChange;
import bootmend.change.FilePlanner;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigName;
import bootmend.profile.ProfileEdit;
import bootmend.record.TrialSettings;
import bootmend.request.BoardRequest;
import bootmend.request.RequestedBoard;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import bootmend.view.CardViews;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Stages a trial that heals itself: {@code tryboot.txt} with the trial's settings, which a board reads once when it is
 * restarted with its try-once flag; any start after that reads the config file again.
 *
 * <p>Source: "autoboot.txt", config_txt/autoboot.adoc, commit 04d84a86.
 */
record StageWork(Work work, ChangeRequest.Stage request) implements WorkOut {

    @Override
    public Worked on(OpenCard card) throws CardException, IOException {
        Board board = board();
        Map<String, Long> named = new TrialSettings(work.workplace()).named(request.settings());
        if (named.isEmpty()) {
            throw CardException.usage("there is nothing to stage", "", NextStep.Plain.GIVE_SETTINGS);
        }
        refuseWhenSwitching(card);
        ConfigFiles files = ConfigFiles.read(card.volume());
        files.main().refuseWhenNotWhole();
        byte[] staged = staged(card, files, board, named).toBytes();
        Optional<StagedFile> before = StagedFile.on(card);
        FileChange change =
                new FileChange(StagedFile.NAME, before.map(StagedFile::bytes).orElse(null), staged);
        FilePlanner planner = work.planner(card);
        planner.put(change);
        Worked worked =
                Worked.of(new CardViews(work.workplace()).of(card, files), planner.plan("stage settings for one try"));
        return before.isPresent()
                ? worked.noting(List.of("Other settings are staged already; these take their place."))
                : worked.shown(List.of(FileEdit.added(
                        StagedFile.NAME,
                        staged,
                        files.main().path(),
                        files.main().bytes())));
    }

    private Board board() throws CardException {
        Board board = new RequestedBoard(tables())
                .facts(BoardRequest.of(request.board()))
                .board()
                .orElseThrow();
        if (!board.knowsTryOnce()) {
            throw CardException.refused(
                    board.id() + " has no try-once start",
                    "Keep a copy of the card and edit its config file in place of a trial that heals itself.");
        }
        return board;
    }

    /** The config file's text with the trial's settings; what the card sets on the board besides stays. */
    private ConfigDocument staged(OpenCard card, ConfigFiles files, Board board, Map<String, Long> named)
            throws CardException, IOException {
        Map<String, String> settings = new LinkedHashMap<>(new CardSettings(tables()).of(files, board));
        named.forEach((key, value) -> settings.put(key, Long.toString(value)));
        Map<String, ConfigDocument> edited = new ProfileEdit(tables(), board, files::pathOf)
                .apply(files.main().path(), files.main().document(), files.includes(), settings);
        for (ConfigFile file : files.all()) {
            if (!file.path().equals(files.main().path())
                    && !edited.getOrDefault(file.path(), file.document()).equals(file.document())) {
                throw CardException.refused(
                        "a setting stands in " + file.path() + ", which " + ConfigName.NAME + " and " + StagedFile.NAME
                                + " would both include",
                        "Move the tuning lines from " + file.path() + " into " + ConfigName.NAME + " first.");
            }
        }
        new NewBlockers(work, Optional.of(board)).refuse(card, edited, "staged");
        return edited.get(files.main().path());
    }

    private static void refuseWhenSwitching(OpenCard card) throws CardException {
        if (card.switchesPartition()) {
            throw CardException.refused(
                    "this card switches whole partitions on a try-once start (tryboot_a_b=1)",
                    "A staged file would not be read.",
                    NextStep.Plain.TAKE_OTHER_PARTITION);
        }
    }

    private TuningTables tables() {
        return work.workplace().tables();
    }
}
