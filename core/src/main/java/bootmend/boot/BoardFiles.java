package bootmend.boot;

import bootmend.tuning.Boards;
import bootmend.tuning.DataFile;
import bootmend.tuning.DataRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a board starts from unless its config file says otherwise; one row of {@code boards.csv}.
 *
 * @param board board id
 * @param secondStage what its ROM loads from the card; empty where it starts from its own boot memory
 * @param start what stands between {@code start} and {@code .elf}; empty where the card holds no such pair for it
 * @param kernels32 default 32-bit kernels, the first that is there counts
 * @param kernels64 default 64-bit kernels, the first that is there counts
 * @param defaultsTo64 which of the two where {@code arm_64bit} is not set
 * @param trees device trees, a list for each variant of the board
 * @param upstreamTrees the same by upstream names
 * @param overlayChip the board's word in the map of overlays
 * @param needsConfig whether it does not start without a config file
 * @param needsTree whether no kernel for it ever started without a device tree
 * @param order in which its device tree came into the builds, among those of its chip family
 */
record BoardFiles(
        String board,
        List<String> secondStage,
        Optional<String> start,
        List<String> kernels32,
        List<String> kernels64,
        boolean defaultsTo64,
        List<Variant> trees,
        List<Variant> upstreamTrees,
        String overlayChip,
        boolean needsConfig,
        boolean needsTree,
        int order) {

    /**
     * Device trees that serve one variant of a board alike.
     *
     * @param names file names, any of which will do
     * @param of chips and board types that the variant is, in lower case; empty where there is only this one
     */
    record Variant(List<String> names, List<String> of) {}

    private static final String NONE = "none";
    private static final Map<String, Boolean> YES_NO = Map.of("yes", true, "no", false);
    private static final Map<String, Boolean> BITS = Map.of("32", false, "64", true);

    /** Every row of the data file; each board that is known has one. */
    static List<BoardFiles> load(Boards boards) {
        return read(DataFile.resource(BoardFiles.class, "boards.csv"), boards);
    }

    static List<BoardFiles> read(DataFile file, Boards boards) {
        List<BoardFiles> all = file.withColumns(
                        "board",
                        "second_stage",
                        "start",
                        "kernel_32",
                        "kernel_64",
                        "bits",
                        "device_tree",
                        "upstream_tree",
                        "overlay_chip",
                        "needs_config",
                        "needs_tree",
                        "order")
                .map(row -> row(row, boards), BoardFiles::board);
        boards.all().stream()
                .filter(board -> all.stream().noneMatch(each -> each.board().equals(board.id())))
                .findFirst()
                .ifPresent(board -> {
                    throw file.rows().get(0).error("there is no row for " + board.id());
                });
        return all;
    }

    private static BoardFiles row(DataRow row, Boards boards) {
        String board = row.required("board");
        if (boards.find(board).isEmpty()) {
            throw row.error("unknown board " + board);
        }
        String start = row.required("start");
        String second = row.required("second_stage");
        return new BoardFiles(
                board,
                second.equals(NONE) ? List.of() : row.words("second_stage"),
                start.equals(NONE) ? Optional.empty() : Optional.of(start.equals("plain") ? "" : start),
                row.words("kernel_32"),
                row.words("kernel_64"),
                row.choice("bits", BITS),
                variants(row, "device_tree"),
                variants(row, "upstream_tree"),
                row.required("overlay_chip"),
                row.choice("needs_config", YES_NO),
                row.choice("needs_tree", YES_NO),
                (int) row.number("age", row.required("order")));
    }

    private static List<Variant> variants(DataRow row, String column) {
        List<Variant> variants = new ArrayList<>();
        for (String word : row.words(column)) {
            String[] parts = word.split("@", 2);
            variants.add(new Variant(
                    List.of(parts[0].split("\\|", -1)),
                    parts.length == 1
                            ? List.of()
                            : List.of(parts[1].toLowerCase(Locale.ROOT).split("\\+", -1))));
        }
        return List.copyOf(variants);
    }

    /** Every device tree that serves some variant of the board, by either kind of name. */
    Stream<String> anyTree() {
        return Stream.concat(trees.stream(), upstreamTrees.stream()).flatMap(variant -> variant.names().stream());
    }

    boolean sharesChipWith(BoardFiles other) {
        return !board.equals(other.board)
                && start.equals(other.start)
                && kernels32.equals(other.kernels32)
                && kernels64.equals(other.kernels64);
    }

    /** The usual files, each kind as a phrase of names. */
    List<String> words() {
        List<String> words = new ArrayList<>();
        words.add(String.join(
                " or ",
                Stream.concat(
                                (defaultsTo64 ? kernels64 : kernels32).stream(),
                                (defaultsTo64 ? kernels32 : kernels64).stream())
                        .toList()));
        start.ifPresent(family -> words.add("start" + family + ".elf with fixup" + family + ".dat"));
        words.addAll(secondStage);
        words.add(String.join(
                " or ",
                trees.stream().flatMap(variant -> variant.names().stream()).toList()));
        return List.copyOf(words);
    }
}
