package bootmend.tuning;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The boards that bootmend knows. */
public final class Boards {

    private static final int MAX_TYPE = 0xFF;
    private static final Map<String, Boolean> YES_NO = Map.of("yes", true, "no", false);
    private static final Map<String, WarrantyBit> WARRANTY_BITS =
            Stream.of(WarrantyBit.values()).collect(Collectors.toMap(WarrantyBit::word, Function.identity()));

    private final List<Board> all;

    private Boards(List<Board> all) {
        this.all = all;
    }

    static Boards read(DataFile file) {
        Set<Integer> seen = new HashSet<>();
        return new Boards(
                file.withColumns("id", "chip", "sees", "board_types", "warranty_bit", "try_once", "note", "source")
                        .map(row -> board(row, seen), Board::id));
    }

    private static Board board(DataRow row, Set<Integer> seenTypes) {
        String id = row.required("id");
        List<String> sees = row.words("sees");
        if (sees.isEmpty() || !sees.get(0).equals(id)) {
            throw row.error("column sees should start with " + id);
        }
        List<Integer> types = new ArrayList<>();
        for (String word : row.words("board_types")) {
            long type = row.number("board_types", word);
            if (type < 0 || type > MAX_TYPE || !seenTypes.add((int) type)) {
                throw row.error("board type " + word + " is out of range or taken by another board");
            }
            types.add((int) type);
        }
        return new Board(
                id,
                row.required("chip"),
                sees,
                List.copyOf(types),
                row.choice("warranty_bit", WARRANTY_BITS),
                row.choice("try_once", YES_NO),
                row.text("note"));
    }

    /** Every board, in the data file's order. */
    public List<Board> all() {
        return all;
    }

    /** The board with exactly this id. */
    public Optional<Board> find(String id) {
        return all.stream().filter(board -> board.id().equals(id)).findFirst();
    }

    /** The board whose new-style revision code carries this type number. */
    public Optional<Board> byType(int type) {
        return all.stream().filter(board -> board.types().contains(type)).findFirst();
    }

    /** Every model filter that some board reads. */
    public Set<String> models() {
        return all.stream().flatMap(board -> board.sees().stream()).collect(Collectors.toUnmodifiableSet());
    }
}
