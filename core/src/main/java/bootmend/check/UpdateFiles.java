package bootmend.check;

import bootmend.boot.BootTables;
import bootmend.tuning.DataFile;
import bootmend.tuning.DataRow;
import bootmend.tuning.TuningTables;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** What a board does at its next start about files of a boot-firmware update. */
public final class UpdateFiles {

    private static final Map<String, State> STATES =
            Map.of("waits", State.WAITS, "perhaps", State.PERHAPS, "alone", State.ALONE, "nothing", State.NOTHING);

    private final List<Rule> rules;

    private UpdateFiles(List<Rule> rules) {
        this.rules = rules;
    }

    /** What files come to. */
    public enum State {
        /** An update runs at the next start. */
        WAITS,
        /** It does on some boards, with some boot firmware or settings. */
        PERHAPS,
        /** The program that would run it is there without an image to write. */
        ALONE,
        /** They do nothing. */
        NOTHING
    }

    /**
     * One row of the table.
     *
     * @param needs files of which every one must be on the card, the first of them to be named
     * @param absent files of which none may be
     * @param boards board ids; empty for every board
     * @param bySelf whether the boot firmware does it by itself, which {@code bootloader_update=0} keeps it from
     * @param does a sentence on what the board does
     * @param citation where it is published
     */
    public record Rule(
            List<String> needs,
            List<String> absent,
            List<String> boards,
            State state,
            boolean bySelf,
            String does,
            String citation) {

        /** Whether these are the files, on a card for this board. */
        public boolean fits(CardFiles files, String boardId) {
            return (boards.isEmpty() || boards.contains(boardId))
                    && needs.stream().allMatch(files::has)
                    && absent.stream().noneMatch(files::has);
        }
    }

    /** @throws bootmend.tuning.DataFileException if the data file is damaged */
    public static UpdateFiles load(TuningTables tables) {
        return read(DataFile.resource(UpdateFiles.class, "update-actions.csv"), tables);
    }

    static UpdateFiles read(DataFile file, TuningTables tables) {
        List<String> names = BootTables.updateFileNames();
        return new UpdateFiles(file.withColumns("needs", "absent", "boards", "state", "by_self", "does", "source")
                .map(row -> rule(row, tables, names), Function.identity()));
    }

    private static Rule rule(DataRow row, TuningTables tables, List<String> names) {
        List<String> boards = row.words("boards");
        boards.forEach(board -> {
            if (tables.boards().find(board).isEmpty()) {
                throw row.error("unknown board " + board);
            }
        });
        row.required("needs");
        Stream.concat(row.words("needs").stream(), row.words("absent").stream()).forEach(name -> {
            if (!names.contains(name)) {
                throw row.error(name + " is not among the files of updates");
            }
        });
        return new Rule(
                row.words("needs"),
                row.words("absent"),
                boards,
                row.choice("state", STATES),
                row.choice("by_self", Map.of("yes", true, "no", false)),
                row.required("does"),
                tables.sources().citation(row, "source"));
    }

    /** In the data file's order. */
    public List<Rule> rules() {
        return rules;
    }

    /** What a board does about the files on a card: the first rule that fits; empty where none does. */
    public Optional<Rule> on(CardFiles files, String boardId) {
        return rules.stream().filter(rule -> rule.fits(files, boardId)).findFirst();
    }
}
