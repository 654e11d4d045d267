package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.card.ConfigFile;
import bootmend.card.ConfigFiles;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.change.FilePlanner;
import bootmend.change.Plan;
import bootmend.config.ConfigDocument;
import bootmend.request.CardRequest;
import bootmend.tuning.StockReset;
import bootmend.view.CardView;
import bootmend.view.CardViews;
import bootmend.workplace.Workplace;
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
            for (ConfigFile file : files.all()) {
                refuseWhenNotWhole(file);
                planner.replace(
                        file.path(),
                        file.entry(),
                        file.bytes(),
                        change(file, reset, lines).toBytes());
            }
            Plan plan = planner.plan(TITLE);
            CardView view = new CardViews(workplace).of(card, files);
            return new ProposedChange(card, view, lines, plan, () -> card.commit(workplace, plan));
        } catch (CardException | IOException | RuntimeException e) {
            throw closing(card, e);
        }
    }

    private ConfigDocument change(ConfigFile file, ResetRequest reset, List<LineChange> lines) {
        List<Integer> numbers =
                StockReset.lineNumbers(file.document(), workplace.tables().vocabulary(), reset.also());
        for (int number : numbers) {
            String before = file.document().line(number).text();
            lines.add(new LineChange(
                    file.path(),
                    number,
                    Optional.of(before),
                    reset.remove() ? Optional.empty() : Optional.of("#" + before)));
        }
        return reset.remove()
                ? file.document().remove(numbers)
                : file.document().commentOut(numbers);
    }

    static void refuseWhenNotWhole(ConfigFile file) throws CardException {
        if (!file.doubts().isEmpty()) {
            throw CardException.refused(
                    file.path() + " could not be read whole (" + file.doubts().get(0) + ")",
                    "",
                    NextStep.Plain.REPAIR_CARD);
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
