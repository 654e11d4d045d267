package bootmend.view;

import java.util.List;
import java.util.Optional;

/**
 * How two cards, profiles or config files differ, as a user is shown it.
 *
 * @param left the first, as it was named
 * @param right the second
 * @param sameConfig whether both have config files and these are the same to the byte
 * @param boards what differs on boards, those with the same differences together; none where nothing does on any
 * @param files files other than the config files that differ, where both have files
 * @param notes sentences on what could not be compared
 */
public record CompareView(
        String left, String right, boolean sameConfig, List<OnBoards> boards, List<OfFile> files, List<String> notes) {

    public CompareView {
        boards = List.copyOf(boards);
        files = List.copyOf(files);
        notes = List.copyOf(notes);
    }

    /**
     * What differs on some boards alike.
     *
     * @param boards ids of the boards
     * @param tuning tuning keys, by what the board comes to
     * @param other all else that the board reads from the config file
     */
    public record OnBoards(List<String> boards, List<Setting> tuning, List<Setting> other) {

        public OnBoards {
            boards = List.copyOf(boards);
            tuning = List.copyOf(tuning);
            other = List.copyOf(other);
        }
    }

    /**
     * One thing that differs; not yet safe to show.
     *
     * @param left its value in the first; empty where that gives it none
     * @param right its value in the second
     */
    public record Setting(String key, Optional<String> left, Optional<String> right) {}

    /**
     * One file that differs.
     *
     * @param left its bytes in the first; empty where it is missing there
     * @param right its bytes in the second
     */
    public record OfFile(String path, Optional<Long> left, Optional<Long> right) {}

    /** Whether nothing was found to differ. */
    public boolean isSame() {
        return boards.isEmpty() && files.isEmpty();
    }
}
