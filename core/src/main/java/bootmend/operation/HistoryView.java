package bootmend.operation;

import bootmend.view.InterruptedChange;
import bootmend.view.RecordedChange;
import java.util.List;

/**
 * What is known on this computer of the changes made to one card.
 *
 * @param changes those surely made to it, the newest first
 * @param untold those, newest first, of which it cannot be told whether they were made to this card or to a sister
 * @param waiting a change that was interrupted
 */
public record HistoryView(List<HistoryEntry> changes, List<RecordedChange> untold, InterruptedChange waiting) {

    public HistoryView {
        changes = List.copyOf(changes);
        untold = List.copyOf(untold);
    }
}
