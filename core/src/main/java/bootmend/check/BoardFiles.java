package bootmend.check;

import bootmend.tuning.Boards;
import bootmend.tuning.DataFile;
import bootmend.tuning.DataRow;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Which files a board starts from.
 *
 * @param board board id
 * @param firmware what stands between {@code start} and {@code .elf}; empty where the board needs no such pair
 * @param bootcode whether it needs {@code bootcode.bin}
 * @param kernels32 its default 32-bit kernels, the first that is there counts
 * @param kernels64 its default 64-bit kernels, the first that is there counts
 * @param defaultsTo64 whether it takes the 64-bit ones where {@code arm_64bit} is not set
 * @param deviceTrees names that fit, {@code *} standing for any run of characters
 */
record BoardFiles(
        String board,
        Optional<String> firmware,
        boolean bootcode,
        List<String> kernels32,
        List<String> kernels64,
        boolean defaultsTo64,
        List<String> deviceTrees) {

    private static final String PLAIN = "plain";
    private static final String NONE = "none";
    private static final Map<String, Boolean> YES_NO = Map.of("yes", true, "no", false);
    private static final Map<String, Boolean> BITS = Map.of("32", false, "64", true);

    /** Every row of the data file; each board that is known has one. */
    static List<BoardFiles> load(Boards boards) {
        return read(DataFile.resource(BoardFiles.class, "boot-files.csv"), boards);
    }

    static List<BoardFiles> read(DataFile file, Boards boards) {
        return file.withColumns("board", "firmware", "bootcode", "kernel_32", "kernel_64", "bits", "device_tree")
                .map(row -> row(row, boards), BoardFiles::board);
    }

    /** The usual files, each kind as a phrase of names. */
    List<String> words() {
        List<String> words = new ArrayList<>();
        List<String> kernels = new ArrayList<>(defaultsTo64 ? kernels64 : kernels32);
        (defaultsTo64 ? kernels32 : kernels64).forEach(kernels::add);
        words.add(String.join(" or ", kernels));
        firmware.ifPresent(family -> words.add("start" + family + ".elf with fixup" + family + ".dat"));
        if (bootcode) {
            words.add("bootcode.bin");
        }
        words.add(String.join(" or ", deviceTrees));
        return List.copyOf(words);
    }

    private static BoardFiles row(DataRow row, Boards boards) {
        String board = row.required("board");
        if (boards.find(board).isEmpty()) {
            throw row.error("unknown board " + board);
        }
        String firmware = row.required("firmware");
        return new BoardFiles(
                board,
                firmware.equals(NONE) ? Optional.empty() : Optional.of(firmware.equals(PLAIN) ? "" : firmware),
                row.choice("bootcode", YES_NO),
                row.words("kernel_32"),
                row.words("kernel_64"),
                row.choice("bits", BITS),
                row.words("device_tree"));
    }
}
