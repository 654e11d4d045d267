package bootmend.check;

import bootmend.boot.BootDiagnosis;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigName;
import bootmend.config.IncludeSource;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.Resolver;
import bootmend.tuning.resolve.StockLines;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** Works out what each board that a card can be meant for makes of what was read from it. */
public final class CardContents {

    private static final String CONFIG = ConfigName.NAME;

    private final TuningTables tables;
    private final Resolver resolver;

    public CardContents(TuningTables tables) {
        this.tables = tables;
        this.resolver = new Resolver(tables);
    }

    /**
     * The content to check.
     *
     * @param facts what is known about the board; where it names none, every board that the card can be meant for
     */
    public CardContent of(ExaminedCard read, BoardFacts facts) {
        ConfigDocument main = read.config().isEmpty()
                ? ConfigDocument.parse(new byte[0])
                : read.config().get(0).document();
        String name = read.config().isEmpty() ? CONFIG : read.config().get(0).path();
        IncludeSource includes = includes(read.config());
        Optional<BootDiagnosis> boot = read.boot();
        List<BoardReading> boards = tables.boards().all().stream()
                .filter(board -> facts.board()
                        .map(board::equals)
                        .or(() -> boot.map(each -> each.boardIds().contains(board.id())))
                        .orElse(true))
                .map(board -> new BoardReading(board, resolver.resolve(name, main, includes, facts.withBoard(board))))
                .toList();
        boolean told = boot.map(each -> !each.meantForNone()).orElse(true);
        StockLines stockLines = StockLines.of(
                tables, boards.stream().map(BoardReading::resolution).toList(), paths(read.config()));
        return new CardContent(read, boards, facts.board().isPresent() || told, Map.of(), stockLines);
    }

    /** Includes as they were read; a name finds its file whatever its case and leading slash. */
    private static IncludeSource includes(List<ConfigText> config) {
        Map<String, byte[]> byPath = new HashMap<>();
        config.forEach(text -> byPath.put(key(text.path()), text.document().toBytes()));
        return name -> Optional.ofNullable(byPath.get(key(name)));
    }

    /** From the name in an include line to the path of the text. */
    private static UnaryOperator<String> paths(List<ConfigText> config) {
        Map<String, String> byKey = new HashMap<>();
        config.forEach(text -> byKey.put(key(text.path()), text.path()));
        return name -> byKey.getOrDefault(key(name), name);
    }

    private static String key(String path) {
        return path.replace('\\', '/').replaceFirst("^/+", "").toLowerCase(Locale.ROOT);
    }
}
