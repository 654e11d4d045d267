package bootmend.config;

import java.util.List;

/**
 * What a board reads: every live line of the config file and of the files it includes, in order.
 *
 * @param lines the lines, those that do not count on this board among them
 * @param problems include lines that could not be followed; what such a file would set is missing from {@code lines}
 */
public record ConfigReading(List<ReachedLine> lines, List<IncludeProblem> problems) {

    public ConfigReading {
        lines = List.copyOf(lines);
        problems = List.copyOf(problems);
    }
}
