package bootmend.view;

import java.util.List;

/**
 * What was kept of a card, as a user is shown it.
 *
 * @param card as it was named
 * @param file where the files were kept
 * @param fileBytes its size
 * @param sha256 of that file, in hex
 * @param files how many files are in it
 * @param bytes theirs together
 * @param notes sentences on what was not kept, or not whole
 */
public record KeepView(
        String card, String file, long fileBytes, String sha256, int files, long bytes, List<String> notes) {

    public KeepView {
        notes = List.copyOf(notes);
    }

    /** Whether every file was kept, each whole. */
    public boolean isWhole() {
        return notes.isEmpty();
    }
}
