package bootmend.operation;

import bootmend.CardException;
import bootmend.card.ConfigFile;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.change.FilePlanner;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigName;
import bootmend.tuning.StockReset;
import bootmend.tuning.Vocabulary;
import bootmend.tuning.resolve.StockLines;
import bootmend.view.CardBoards;
import bootmend.view.CardViews;
import java.io.IOException;
import java.util.List;

/** Puts a card's tuning lines back to stock. */
record StockWork(Work work, ChangeRequest.ToStock request) implements WorkOut {

    private static final String TITLE = "back to stock";

    @Override
    public Worked on(OpenCard card) throws CardException, IOException {
        checkKeys();
        ConfigFiles files = ConfigFiles.read(card.volume());
        StockLines atStock = new CardBoards(work.workplace().tables()).stockLines(card, files);
        FilePlanner planner = work.planner(card);
        for (ConfigFile file : files.all()) {
            file.refuseWhenNotWhole();
            planner.replace(
                    file.path(),
                    file.entry(),
                    file.bytes(),
                    change(file, atStock).toBytes());
        }
        return Worked.of(new CardViews(work.workplace()).of(card, files), planner.plan(TITLE))
                .noting(notes(card));
    }

    private void checkKeys() throws CardException {
        for (String key : request.also()) {
            if (vocabulary().find(key).isEmpty()) {
                throw CardException.usage(
                        key + " is no tuning key",
                        "Keys are written as in the config file, in lower case, such as arm_boost.");
            }
        }
    }

    private ConfigDocument change(ConfigFile file, StockLines atStock) {
        List<StockReset.LineReset> resets = StockReset.of(
                file.document(),
                vocabulary(),
                request.also(),
                line -> atStock.isAtStock(
                        file.path(), line.lineNumber(), line.tuningKey().key()));
        return StockReset.apply(file.document(), resets, request.remove());
    }

    static List<String> notes(OpenCard card) throws IOException {
        return card.volume().root().find(ConfigName.TRY_ONCE).isPresent()
                ? List.of(ConfigName.TRY_ONCE
                        + " stays as it is: a board that is started with its try-once flag reads it in " + "place of "
                        + ConfigName.NAME + ".")
                : List.of();
    }

    private Vocabulary vocabulary() {
        return work.workplace().tables().vocabulary();
    }
}
