package bootmend.check;

import bootmend.config.ConfigDocument;
import bootmend.config.IncludeSource;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.Resolver;
import bootmend.tuning.resolve.StockLines;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** Concludes from what was read which boards the card is for, and what each of them makes of it. */
public final class CardContents {

    private static final String CONFIG = "config.txt";

    private final TuningTables tables;
    private final Resolver resolver;
    private final BootableBoards boardsByFiles;

    public CardContents(TuningTables tables) {
        this.tables = tables;
        this.resolver = new Resolver(tables);
        this.boardsByFiles = new BootableBoards(tables);
    }

    /**
     * The content to check, without a look into files yet.
     *
     * @param facts what is known about the board; where it names none, every board that the card can boot
     */
    public CardContent of(CardRead read, BoardFacts facts) {
        ConfigDocument main = read.config().isEmpty()
                ? ConfigDocument.parse(new byte[0])
                : read.config().get(0).document();
        String name = read.config().isEmpty() ? CONFIG : read.config().get(0).path();
        IncludeSource includes = includes(read.config());
        List<Board> asked = facts.board().map(List::of).orElse(tables.boards().all());
        List<BoardReading> boards = new ArrayList<>();
        List<BoardReading> bootable = new ArrayList<>();
        Map<String, BoardNeeds> needs = new LinkedHashMap<>();
        for (Board board : asked) {
            BoardReading reading =
                    new BoardReading(board, resolver.resolve(name, main, includes, facts.withBoard(board)));
            boards.add(reading);
            BootNeeds need = boardsByFiles.needs(reading, read.files());
            if (facts.board().isPresent() || need.boardCanBoot()) {
                bootable.add(reading);
                needs.put(board.id(), new BoardNeeds(need.all(), need.prefixesToNowhere()));
            }
        }
        List<BoardReading> chosen = bootable.isEmpty() ? boards : bootable;
        StockLines stockLines = StockLines.of(
                tables, chosen.stream().map(BoardReading::resolution).toList(), paths(read.config()));
        return new CardContent(read, chosen, !bootable.isEmpty(), needs, Map.of(), Map.of(), stockLines);
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
