package bootmend.check;

import bootmend.config.IncludeProblem;
import bootmend.finding.Place;
import java.util.ArrayList;
import java.util.List;

/** Include lines that could not be followed. */
record IncludeCheck() implements Check {

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        for (BoardReading board : card.boards()) {
            for (IncludeProblem problem : board.resolution().reading().problems()) {
                remarks.add(Remark.on(
                        board, rule(problem.kind()), Place.line(problem.file(), problem.line()), what(problem)));
            }
        }
        return remarks;
    }

    private static String rule(IncludeProblem.Kind kind) {
        return switch (kind) {
            case MISSING -> "include-missing";
            case LOOP -> "include-loop";
            case TOO_DEEP, TOO_MUCH -> "include-not-followed";
        };
    }

    private static String what(IncludeProblem problem) {
        return "include " + problem.name()
                + switch (problem.kind()) {
                    case MISSING -> " names a file that is not on the boot partition, or cannot be read as one.";
                    case LOOP -> " comes back to a file that is being read.";
                    case TOO_DEEP -> " is the last of a long row of includes.";
                    case TOO_MUCH -> " would be more than can be followed.";
                };
    }
}
