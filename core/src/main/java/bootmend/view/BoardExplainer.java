package bootmend.view;

import bootmend.boot.BootTables;
import bootmend.tuning.Board;
import bootmend.tuning.Caution;
import bootmend.tuning.Source;
import bootmend.tuning.StockRule;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningTables;
import bootmend.tuning.VoltageScale;
import bootmend.tuning.WarrantyBit;
import java.util.List;
import java.util.stream.Stream;

/** Explains a board from the tables. */
final class BoardExplainer {

    private static final double MICROVOLTS = 1_000_000;
    /** Stock and volts, filters, revision codes, boot files. */
    private static final List<String> SOURCES = List.of("S1", "S2", "S3", "S7");

    private static final String FROM_MEMORY =
            "values from memory: boot files of boards that the last one does not name, and device trees' chip numbers";
    private static final String TOPIC = "board";

    private final TuningTables tables;

    BoardExplainer(TuningTables tables) {
        this.tables = tables;
    }

    BoardExplanation explain(Board board) {
        return new BoardExplanation(
                board.id(),
                board.chip(),
                board.sees().stream().map(id -> "[" + id + "]").toList(),
                board.types().stream()
                        .map(type -> String.format("0x%02x", type))
                        .toList(),
                board.warrantyBit().word(),
                stock(board),
                volts(board),
                new BootTables(tables).usualFiles(board.id()),
                note(board),
                CautionView.of(cautions(board)),
                sources());
    }

    /** What is to know of the board, and why no volts can be told where that is so. */
    private String note(Board board) {
        return tables.vocabulary().keys().stream()
                .map(TuningKey::key)
                .flatMap(key -> tables
                        .voltageSteps()
                        .unclear(key, board.id())
                        .map(why -> "Volts of " + key + " cannot be told: " + why)
                        .stream())
                .reduce(board.note(), (all, more) -> all.isEmpty() ? more : all + ". " + more);
    }

    private List<BoardExplanation.KeyStock> stock(Board board) {
        KeyExplainer words = new KeyExplainer(tables);
        return tables.vocabulary().keys().stream()
                .filter(key -> key.stock() instanceof StockRule.PerBoard)
                .filter(key -> key.sets().isEmpty())
                .map(key -> new BoardExplanation.KeyStock(key.key(), words.stock(key, board)))
                .toList();
    }

    private List<BoardExplanation.VoltsView> volts(Board board) {
        return tables.vocabulary().keys().stream()
                .map(TuningKey::key)
                .flatMap(key -> tables.voltageSteps().scale(key, board.id()).stream())
                .map(BoardExplainer::volts)
                .toList();
    }

    private static BoardExplanation.VoltsView volts(VoltageScale scale) {
        return new BoardExplanation.VoltsView(
                scale.key(),
                scale.min(),
                at(scale, scale.min()),
                scale.zeroMicrovolts() / MICROVOLTS,
                scale.max(),
                at(scale, scale.max()),
                scale.stepMicrovolts() / MICROVOLTS);
    }

    private static double at(VoltageScale scale, long step) {
        return scale.microvolts(step).orElseThrow() / MICROVOLTS;
    }

    private List<Caution> cautions(Board board) {
        Stream<Caution> general = tables.cautions().about(TOPIC).stream();
        return board.warrantyBit() == WarrantyBit.NEVER_SET
                ? general.toList()
                : Stream.concat(
                                general,
                                tables.cautions().all().stream()
                                        .filter(caution -> caution.causes().contains(Caution.WARRANTY)))
                        .distinct()
                        .toList();
    }

    private List<String> sources() {
        return Stream.concat(
                        SOURCES.stream()
                                .flatMap(id -> tables.sources().find(id).stream())
                                .map(Source::citation),
                        Stream.of(FROM_MEMORY))
                .toList();
    }
}
