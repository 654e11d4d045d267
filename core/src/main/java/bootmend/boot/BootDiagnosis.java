package bootmend.boot;

import bootmend.tuning.Board;
import bootmend.tuning.resolve.BoardFacts;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * Why a card does or does not boot, for each board that it can be meant for.
 *
 * @param boards each board, in the boards' own order; never empty
 * @param meantForNone whether nothing on the card tells a board, so that every board is listed
 * @param versions which builds of boot firmware the card holds; none where no boot file was opened
 * @param notTold what a card never tells, one sentence each
 */
public record BootDiagnosis(
        List<BoardDiagnosis> boards, boolean meantForNone, List<FirmwareVersion> versions, List<String> notTold) {

    public BootDiagnosis {
        boards = List.copyOf(boards);
        versions = List.copyOf(versions);
        notTold = List.copyOf(notTold);
    }

    /**
     * Looks at a card.
     *
     * @param facts what is known of the board; where it names none, every board that the card can be meant for
     * @param depth whether boot files are opened
     * @throws IOException where the boot partition itself cannot be read
     */
    public static BootDiagnosis of(BootCard card, BoardFacts facts, BootTables tables, Depth depth) throws IOException {
        return new Diagnoser(card, facts, tables, depth).diagnose();
    }

    /**
     * Which builds of boot firmware the board takes from a card, and those of updates that wait on it; only these files are
     * opened.
     *
     * @param facts what is known of the board; where it names none, of every board that the card can be meant for
     */
    public static List<FirmwareVersion> builds(BootCard card, BoardFacts facts, BootTables tables) throws IOException {
        return new Diagnoser(card, facts, tables, Depth.LISTING).builds();
    }

    /**
     * The same of a card on which no boot partition was found or could be opened, so that nothing behind that was looked at.
     *
     * @param facts what is known of the board; where it names none, every board
     */
    public static BootDiagnosis withoutPartition(BoardFacts facts, BootTables tables, NoBootPartition found) {
        List<BoardDiagnosis> boards = tables.tuning().boards().all().stream()
                .map(Board::id)
                .filter(id ->
                        facts.board().isEmpty() || facts.board().get().id().equals(id))
                .map(id -> new BoardDiagnosis(
                        id,
                        facts.board().isPresent() ? "it was asked for" : "nothing on the card tells another",
                        found.chain(id),
                        Optional.empty()))
                .toList();
        return new BootDiagnosis(boards, facts.board().isEmpty(), List.of(), Diagnoser.NOT_TOLD);
    }

    /** The boards' ids. */
    public List<String> boardIds() {
        return boards.stream().map(BoardDiagnosis::board).toList();
    }

    /** Whether some board starts from the card, as far as it can tell. */
    public boolean anyBoots() {
        return boards.stream().anyMatch(board -> board.chain().verdict() instanceof Verdict.Boots);
    }
}
