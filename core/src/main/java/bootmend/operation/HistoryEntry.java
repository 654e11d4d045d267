package bootmend.operation;

import java.time.Instant;
import java.util.List;

/**
 * One change that was made to a card from this computer.
 *
 * @param number counts from 1, the oldest first
 * @param title what it did
 * @param files what it did to files
 * @param sectors sector writes
 * @param undone whether it was undone since
 * @param undoRecord where its undo record lies
 */
public record HistoryEntry(
        int number, Instant when, String title, List<FileEdit> files, int sectors, boolean undone, String undoRecord) {

    public HistoryEntry {
        files = List.copyOf(files);
    }

    /** The lines that it changed, in the files' order. */
    public List<LineChange> lines() {
        return files.stream().flatMap(file -> file.lines().stream()).toList();
    }
}
