package bootmend.operation;

import bootmend.CardException;
import bootmend.card.ConfigFile;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.change.FilePlanner;
import bootmend.config.ConfigDocument;
import bootmend.profile.ProfileEdit;
import bootmend.tuning.Board;
import bootmend.view.CardViews;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;

/** Makes a card's tuning lines exactly these settings, for one board; blockers in them are refused. */
record SettingsPut(Work work, Board board, Map<String, String> settings, String title) {

    Worked on(OpenCard card) throws CardException, IOException {
        ConfigFiles files = ConfigFiles.read(card.volume());
        Map<String, ConfigDocument> edited = new ProfileEdit(work.workplace().tables(), board, files::pathOf)
                .apply(files.main().path(), files.main().document(), files.includes(), settings);
        new NewBlockers(work, Optional.of(board)).refuse(card, edited, "put there");
        FilePlanner planner = work.planner(card);
        for (ConfigFile file : files.all()) {
            file.refuseWhenNotWhole();
            ConfigDocument after = edited.getOrDefault(file.path(), file.document());
            planner.replace(file.path(), file.entry(), file.bytes(), after.toBytes());
        }
        return Worked.of(new CardViews(work.workplace()).of(card, files), planner.plan(title));
    }
}
