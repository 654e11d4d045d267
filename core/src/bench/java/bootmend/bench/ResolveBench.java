package bootmend.bench;

import bootmend.config.ConfigDocument;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.Resolution;
import bootmend.tuning.resolve.Resolver;
import java.util.List;
import java.util.Optional;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.infra.Blackhole;

/** What the demo card's config file comes to, on one board and on each board there is. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
public class ResolveBench {

    private final TuningTables tables = TuningTables.load();
    private final Resolver resolver = new Resolver(tables);
    private final ConfigDocument document = ConfigDocument.parse(ConfigText.demo());
    private final List<Board> boards = tables.boards().all();
    private final Board board =
            boards.stream().filter(each -> each.id().equals("pi4")).findFirst().orElseThrow();

    @Benchmark
    public Resolution oneBoard() {
        return resolve(board);
    }

    @Benchmark
    public void allBoards(Blackhole sink) {
        boards.forEach(each -> sink.consume(resolve(each)));
    }

    private Resolution resolve(Board each) {
        return resolver.resolve("config.txt", document, name -> Optional.empty(), BoardFacts.of(each));
    }
}
