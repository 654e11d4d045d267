package bootmend.tuning;

import bootmend.config.Truth;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A board, or some of its revisions.
 *
 * @param board board id, such as {@code pi4}
 * @param minRevision lowest revision number, 0 to 15; revision 1.4 is number 4
 * @param maxRevision highest revision number, 0 to 15
 */
public record BoardRange(String board, int minRevision, int maxRevision) {

    /** The highest number that the revision field of a revision code can hold (four bits). */
    static final int LAST_REVISION = 15;

    private static final Pattern TOKEN = Pattern.compile("([a-z0-9+]+)(?:@(\\d{1,2})-(\\d{0,2}))?");

    public BoardRange {
        if (minRevision < 0 || maxRevision < minRevision || maxRevision > LAST_REVISION) {
            throw new IllegalArgumentException("revisions run from 0 to " + LAST_REVISION);
        }
    }

    /** Reads {@code ID}, {@code ID@FROM-} or {@code ID@FROM-TO}. */
    static BoardRange parse(String token, DataRow row) {
        Matcher matcher = TOKEN.matcher(token);
        if (!matcher.matches()) {
            throw row.error("a board is written ID, ID@FROM- or ID@FROM-TO, found " + token);
        }
        int min = matcher.group(2) == null ? 0 : Integer.parseInt(matcher.group(2));
        String max = matcher.group(3);
        try {
            return new BoardRange(
                    matcher.group(1), min, max == null || max.isEmpty() ? LAST_REVISION : Integer.parseInt(max));
        } catch (IllegalArgumentException e) {
            throw row.error(e.getMessage() + ", found " + token);
        }
    }

    /** Whether the range is for every revision of its board. */
    public boolean coversAllRevisions() {
        return minRevision == 0 && maxRevision == LAST_REVISION;
    }

    /** Whether a board is in the range; unknown where only some revisions are and the revision is not given. */
    public Truth contains(String boardId, OptionalInt revision) {
        if (!board.equals(boardId)) {
            return Truth.FALSE;
        }
        if (coversAllRevisions()) {
            return Truth.TRUE;
        }
        if (revision.isEmpty()) {
            return Truth.UNKNOWN;
        }
        return Truth.of(revision.getAsInt() >= minRevision && revision.getAsInt() <= maxRevision);
    }
}
