package bootmend.operation;

import java.time.Instant;
import java.util.List;

/**
 * One change that was made to a card from this computer.
 *
 * @param number counts from 1, the oldest first
 * @param title what it did
 * @param lines the config file's lines that it changed
 * @param sectors sector writes
 * @param takenBack whether it was taken back since
 * @param undoRecord where its undo record lies
 */
public record HistoryEntry(
        int number,
        Instant when,
        String title,
        List<LineChange> lines,
        int sectors,
        boolean takenBack,
        String undoRecord) {}
