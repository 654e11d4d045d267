package bootmend.tuning;

import bootmend.config.Filter;
import bootmend.config.Truth;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** Which boards know which kinds of section filter; what a board makes of one that it does not know is not published. */
public final class FilterBoards {

    private final List<Row> rows;

    private FilterBoards(List<Row> rows) {
        this.rows = rows;
    }

    /** One row of the data file. */
    private record Row(String filter, BoardSet boards, String appliesTo, String citation) {}

    static FilterBoards read(DataFile file, Sources sources) {
        return new FilterBoards(file.withColumns("filter", "boards", "applies_to", "source")
                .map(
                        row -> new Row(
                                row.required("filter"),
                                BoardSet.parse(row.words("boards"), row),
                                row.required("applies_to"),
                                sources.citation(row, "source")),
                        Row::filter));
    }

    /** The boards that a filter is for, in words, where this board is none of them; empty where it knows the filter. */
    public Optional<String> missingOn(Board board, Filter filter) {
        return name(filter)
                .flatMap(name -> rows.stream()
                        .filter(row -> row.filter().equals(name)
                                && row.boards().contains(board.id(), OptionalInt.empty()) != Truth.TRUE)
                        .map(Row::appliesTo)
                        .findFirst());
    }

    private static Optional<String> name(Filter filter) {
        if (filter instanceof Filter.Monitor) {
            return Optional.of("EDID");
        } else if (filter instanceof Filter.Hdmi) {
            return Optional.of("HDMI");
        }
        return filter instanceof Filter.BootVariable variable ? Optional.of(variable.name()) : Optional.empty();
    }
}
