package bootmend.view;

import bootmend.CardException;
import bootmend.card.ConfigFile;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.config.ConfigName;
import bootmend.tuning.TuningLine;
import bootmend.tuning.TuningLines;
import bootmend.tuning.resolve.StockLines;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Makes views of open cards. */
public final class CardViews {

    /** The state of a line that holds its stock value on every board of the card that reads it. */
    private static final String SET_TO_STOCK = "set to stock";

    private final Workplace workplace;

    public CardViews(Workplace workplace) {
        this.workplace = workplace;
    }

    /** The whole view; a config file that cannot be read is part of it, not a failure. */
    public CardView of(OpenCard card) throws CardException, IOException {
        try {
            return of(card, ConfigFiles.read(card.volume()));
        } catch (CardException e) {
            return withoutConfig(card, e);
        }
    }

    /** The view of a card whose config file cannot be read. */
    public CardView withoutConfig(OpenCard card, CardException problem) throws CardException, IOException {
        return new CardView(
                card.named(),
                card.kind(),
                card.bytes(),
                card.partition(),
                Optional.empty(),
                Optional.of(problem),
                List.of(),
                cardNotes(card));
    }

    public CardView of(OpenCard card, ConfigFiles files) throws CardException, IOException {
        ConfigFile main = files.main();
        List<TuningView> tuning = new ArrayList<>();
        StockLines atStock = new CardBoards(workplace.tables()).stockLines(card, files);
        for (ConfigFile file : files.all()) {
            for (TuningLine line :
                    TuningLines.find(file.document(), workplace.tables().vocabulary())) {
                boolean same = line.isActive()
                        && atStock.isAtStock(
                                file.path(), line.lineNumber(), line.tuningKey().key());
                tuning.add(view(file.path(), line, same));
            }
        }
        List<String> notes = cardNotes(card);
        notes.addAll(files.warnings());
        return new CardView(
                card.named(),
                card.kind(),
                card.bytes(),
                card.partition(),
                Optional.of(new ConfigView(main.path(), main.bytes())),
                Optional.empty(),
                tuning,
                notes);
    }

    private List<String> cardNotes(OpenCard card) throws CardException, IOException {
        List<String> notes = new ArrayList<>(card.tableWarnings());
        notes.addAll(card.volume().warnings());
        notes.addAll(card.volume().remarks());
        notes.addAll(card.volume().root().warnings());
        waiting(InterruptedChange.of(card.waiting(workplace.store()))).ifPresent(notes::add);
        if (card.volume().root().find(ConfigName.TRY_ONCE).isPresent()) {
            notes.add(ConfigName.TRY_ONCE
                    + " is staged: a board that is started with its try-once flag reads it in place of "
                    + ConfigFiles.NAME);
        }
        return notes;
    }

    /** Another card's change is no matter of this one. */
    private static Optional<String> waiting(InterruptedChange waiting) {
        if (waiting instanceof InterruptedChange.Unclear) {
            return Optional.of(
                    "a change to this card or to another written from the same image was interrupted, and it "
                            + "cannot be told to which");
        }
        return waiting.own()
                .map(change -> "a change (\"" + change.title() + "\", begun " + change.began() + ") was interrupted: "
                        + change.state() + "; it waits to be finished or undone");
    }

    private TuningView view(String file, TuningLine line, boolean atStock) {
        Optional<String> stock = new StockWords(workplace.tables()).of(line);
        return new TuningView(
                file,
                line.lineNumber(),
                line.section().orElse(""),
                line.key(),
                line.value(),
                line.tuningKey().unit(),
                stock,
                line.isActive(),
                atStock ? SET_TO_STOCK : line.state().word(),
                line.tuningKey().resets() && !atStock,
                Optional.empty());
    }
}
