package bootmend.job;

import bootmend.CardException;
import bootmend.change.FilePlanner;
import bootmend.change.Plan;
import bootmend.config.ConfigDocument;
import bootmend.tuning.StockReset;
import bootmend.tuning.resolve.StockLines;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Puts a card's tuning lines back to stock. */
public final class ResetJob {

    private static final String TITLE = "back to stock";

    private final Workplace workplace;

    public ResetJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /** Works the change out on a card that is only read; it cannot be applied. */
    public ProposedChange preview(CardRequest request, ResetRequest reset) throws CardException {
        checkKeys(reset);
        return propose(OpenCard.open(workplace.opener(), request, false), reset);
    }

    /** Works the change out on a card that stays locked until the proposal is closed. */
    public ProposedChange begin(CardRequest request, ResetRequest reset) throws CardException {
        checkKeys(reset);
        return propose(OpenCard.open(workplace.opener(), request, true), reset);
    }

    private void checkKeys(ResetRequest reset) throws CardException {
        for (String key : reset.also()) {
            if (workplace.tables().vocabulary().find(key).isEmpty()) {
                throw CardException.usage(
                        key + " is no tuning key",
                        "Keys are written as in the config file, in lower " + "case, such as arm_boost.");
            }
        }
    }

    private ProposedChange propose(OpenCard card, ResetRequest reset) throws CardException {
        try {
            RecoverJob.refuseWhenWaiting(card, workplace);
            ConfigFiles files = ConfigFiles.read(card.volume());
            FilePlanner planner = card.planner(workplace, reset.inPlace());
            List<LineChange> lines = new ArrayList<>();
            StockLines atStock = new CardBoards(workplace.tables()).stockLines(card, files);
            for (ConfigFile file : files.all()) {
                refuseWhenNotWhole(file);
                planner.replace(
                        file.path(),
                        file.entry(),
                        file.bytes(),
                        change(file, reset, atStock, lines).toBytes());
            }
            Plan plan = planner.plan(TITLE);
            CardView view = new CardViews(workplace).of(card, files);
            return new ProposedChange(card, view, lines, plan, () -> card.commit(workplace, plan));
        } catch (IOException | RuntimeException e) {
            throw closing(card, e);
        }
    }

    private ConfigDocument change(ConfigFile file, ResetRequest reset, StockLines atStock, List<LineChange> lines) {
        List<StockReset.LineReset> resets = StockReset.of(
                file.document(),
                workplace.tables().vocabulary(),
                reset.also(),
                line -> atStock.isAtStock(
                        file.path(), line.lineNumber(), line.tuningKey().key()));
        ConfigDocument kept = StockReset.withValues(file.document(), resets);
        for (StockReset.LineReset each : resets) {
            String before = file.document().line(each.line()).text();
            Optional<String> gone = reset.remove() ? Optional.empty() : Optional.of("#" + before);
            lines.add(new LineChange(
                    file.path(),
                    each.line(),
                    Optional.of(before),
                    each.value().map(value -> kept.line(each.line()).text()).or(() -> gone)));
        }
        return StockReset.apply(file.document(), resets, reset.remove());
    }

    static void refuseWhenNotWhole(ConfigFile file) throws CardException {
        if (!file.doubts().isEmpty()) {
            throw CardException.refused(
                    file.path() + " could not be read whole (" + file.doubts().get(0) + ")",
                    "Run `bootmend repair` on the card first.");
        }
    }

    static CardException closing(OpenCard card, Exception e) {
        try {
            card.close();
        } catch (IOException closing) {
            e.addSuppressed(closing);
        }
        if (e instanceof RuntimeException unexpected) {
            throw unexpected;
        }
        return e instanceof CardException told ? told : JobErrors.unreadable((IOException) e);
    }
}
