package bootmend.tuning.resolve;

import bootmend.config.Condition;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigReader;
import bootmend.config.ConfigReading;
import bootmend.config.Filter;
import bootmend.config.FilterParser;
import bootmend.config.IncludeSource;
import bootmend.tuning.TuningTables;
import java.util.List;

/** Computes what a config file comes to on a board. */
public final class Resolver {

    private final TuningTables tables;
    private final FilterParser filters;

    public Resolver(TuningTables tables) {
        this.tables = tables;
        this.filters = new FilterParser(tables.boards().models());
    }

    /**
     * Resolves one config file; never fails on what the file holds.
     *
     * @param file the config file's name, such as {@code config.txt}
     * @param document its lines
     * @param includes where the files it includes come from
     * @param facts what is known about the board
     */
    public Resolution resolve(String file, ConfigDocument document, IncludeSource includes, BoardFacts facts) {
        ConfigReading reading = ConfigReader.read(file, document, includes, filters, filter -> test(filter, facts));
        List<Effective> effective = new TuningResolver(tables.vocabulary(), tables.stock(), facts, reading).effective();
        return new Resolution(facts, reading, effective, LineOutcomes.of(reading, tables.vocabulary(), effective));
    }

    private Condition test(Filter filter, BoardFacts facts) {
        return facts.board()
                .flatMap(board -> tables.filters()
                        .missingOn(board, filter)
                        .map(others -> Condition.dependsOn("what " + board.id() + " makes of " + filter.text()
                                + ", which is published for " + others + " only")))
                .orElseGet(() -> facts.test(filter));
    }
}
