package bootmend.operation;

import bootmend.CardException;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.change.History;
import bootmend.change.UndoRecord;
import bootmend.request.CardRequest;
import bootmend.view.InterruptedChange;
import bootmend.view.RecordedChange;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Lists the changes that were made to a card from this computer. */
public final class HistoryJob {

    private final Workplace workplace;

    public HistoryJob(Workplace workplace) {
        this.workplace = workplace;
    }

    public HistoryView run(CardRequest request) throws CardException {
        try (OpenCard card = OpenCard.open(workplace.opener(), request, false)) {
            History history = card.history(workplace.store());
            List<UndoRecord> records = history.oldestFirst();
            List<HistoryEntry> entries = new ArrayList<>();
            for (int i = 0; i < records.size(); i++) {
                entries.add(entry(i + 1, records.get(i)));
            }
            Collections.reverse(entries);
            return new HistoryView(
                    entries,
                    history.untold().stream().map(RecordedChange::of).toList(),
                    InterruptedChange.of(card.waiting(workplace.store())));
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    private static HistoryEntry entry(int number, UndoRecord record) {
        return new HistoryEntry(
                number,
                record.created(),
                record.plan().title(),
                FileEdit.of(record.plan().files()),
                record.plan().sectorsWritten(),
                record.state() == UndoRecord.State.UNDONE,
                record.file().toString());
    }
}
