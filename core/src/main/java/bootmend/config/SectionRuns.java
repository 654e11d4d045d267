package bootmend.config;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The runs of a config file's lines over which the same filters hold; what it includes is not followed. */
public final class SectionRuns {

    private final List<Run> runs;

    private SectionRuns(List<Run> runs) {
        this.runs = runs;
    }

    /**
     * Lines under the same filters.
     *
     * @param filters those in force, none where every board reads the lines
     * @param sure whether it is published that just these are in force
     * @param first number of the line behind the section line, 1 at the top of the file
     * @param end number after the last line, at least {@code first}
     */
    public record Run(List<Filter> filters, boolean sure, int first, int end) {

        public Run {
            filters = List.copyOf(filters);
        }

        /** Whether just this filter holds here, or none where it is {@code [all]}. */
        public boolean isUnder(Filter filter) {
            return sure && filters.equals(filter instanceof Filter.All ? List.of() : List.of(filter));
        }
    }

    /** Goes through the document's section lines. */
    public static SectionRuns of(ConfigDocument document, FilterParser parser) {
        List<Run> runs = new ArrayList<>();
        FilterState state = FilterState.EMPTY;
        int first = 1;
        for (ConfigLine line : document.lines()) {
            if (line.kind() instanceof LineKind.Section section) {
                runs.add(run(state, first, line.number()));
                state = state.with(parser.parse(section.raw()));
                first = line.number() + 1;
            }
        }
        runs.add(run(state, first, document.lines().size() + 1));
        return new SectionRuns(List.copyOf(runs));
    }

    private static Run run(FilterState state, int first, int end) {
        return new Run(state.together(), state.replacing().equals(state.together()), first, end);
    }

    /** In the file's order; the last one is where a line at the end would stand. */
    public List<Run> all() {
        return runs;
    }

    /** The last run under just this filter. */
    public Optional<Run> lastUnder(Filter filter) {
        return runs.stream().filter(run -> run.isUnder(filter)).reduce((earlier, later) -> later);
    }
}
