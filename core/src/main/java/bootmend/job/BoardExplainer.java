package bootmend.job;

import bootmend.tuning.Board;
import bootmend.tuning.BoardFiles;
import bootmend.tuning.Caution;
import bootmend.tuning.FirmwarePair;
import bootmend.tuning.Source;
import bootmend.tuning.StockRule;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningTables;
import bootmend.tuning.VoltageScale;
import bootmend.tuning.WarrantyBit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Explains a board from the tables. */
final class BoardExplainer {

    private static final double MICROVOLTS = 1_000_000;
    private static final String STOCK_SOURCE = "S1";
    private static final String FILTER_SOURCE = "S2";
    private static final String REVISION_SOURCE = "S3";
    private static final String TOPIC = "board";

    private final TuningTables tables;

    BoardExplainer(TuningTables tables) {
        this.tables = tables;
    }

    BoardExplanation explain(Board board) {
        Optional<BoardFiles> files = tables.boardFiles().find(board.id());
        return new BoardExplanation(board.id(), board.chip(), board.sees().stream().map(id -> "[" + id + "]").toList(),
                board.types().stream().map(type -> String.format("0x%02x", type)).toList(),
                board.warrantyBit().word(), stock(board), volts(board),
                files.map(BoardExplainer::bootFiles).orElse(List.of()), board.note(),
                CautionView.of(cautions(board)), sources(files));
    }

    private List<BoardExplanation.KeyStock> stock(Board board) {
        KeyExplainer words = new KeyExplainer(tables);
        return tables.vocabulary().keys().stream().filter(key -> key.stock() instanceof StockRule.PerBoard)
                .filter(key -> key.sets().isEmpty())
                .map(key -> new BoardExplanation.KeyStock(key.key(), words.stock(key, board))).toList();
    }

    private List<BoardExplanation.VoltsView> volts(Board board) {
        return tables.vocabulary().keys().stream().map(TuningKey::key)
                .flatMap(key -> tables.voltageSteps().scale(key, board.id()).stream()).map(BoardExplainer::volts)
                .toList();
    }

    private static BoardExplanation.VoltsView volts(VoltageScale scale) {
        return new BoardExplanation.VoltsView(scale.key(), scale.min(), at(scale, scale.min()),
                scale.zeroMicrovolts() / MICROVOLTS, scale.max(), at(scale, scale.max()),
                scale.stepMicrovolts() / MICROVOLTS);
    }

    private static double at(VoltageScale scale, long step) {
        return scale.microvolts(step).orElseThrow() / MICROVOLTS;
    }

    private static List<String> bootFiles(BoardFiles files) {
        List<String> phrases = new ArrayList<>();
        phrases.add(String.join(" or ", files.kernels()));
        if (!files.firmware().isEmpty()) {
            phrases.add(files.firmware().stream().map(FirmwarePair::words).collect(Collectors.joining(", or ")));
        }
        if (files.bootcode()) {
            phrases.add("bootcode.bin");
        }
        return phrases;
    }

    private List<Caution> cautions(Board board) {
        Stream<Caution> general = tables.cautions().about(TOPIC).stream();
        return board.warrantyBit() == WarrantyBit.NEVER_SET ? general.toList()
                : Stream.concat(general, tables.cautions().all().stream()
                        .filter(caution -> caution.causes().contains(Caution.WARRANTY))).distinct().toList();
    }

    private List<String> sources(Optional<BoardFiles> files) {
        return Stream.concat(Stream.of(FILTER_SOURCE, REVISION_SOURCE, STOCK_SOURCE)
                .flatMap(id -> tables.sources().find(id).stream()).map(Source::citation),
                files.map(found -> "boot files: " + found.citation()).stream()).toList();
    }
}
