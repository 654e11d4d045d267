package bootmend.check;

import bootmend.config.ConfigLine;
import bootmend.config.IncludeProblem;
import bootmend.config.LineKind;
import bootmend.finding.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Include lines that could not be followed. */
record IncludeCheck() implements Check {

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        for (BoardReading board : card.boards()) {
            for (IncludeProblem problem : board.resolution().reading().problems()) {
                if (problem.kind() == IncludeProblem.Kind.MISSING && isOffered(card, problem)) {
                    continue;
                }
                remarks.add(Remark.on(
                        board, rule(problem.kind()), Place.line(problem.file(), problem.line()), what(problem)));
            }
        }
        return remarks;
    }

    /** Whether the comment right above names the file too: a place for settings that need not be there. */
    private static boolean isOffered(CardContent card, IncludeProblem problem) {
        Optional<ConfigText> text = card.read().config().stream()
                .filter(each -> each.path().equalsIgnoreCase(problem.file()))
                .findFirst();
        if (text.isEmpty()) {
            return false;
        }
        List<ConfigLine> lines = text.get().document().lines();
        for (int i = problem.line() - 2; i >= 0 && i < lines.size(); i--) {
            if (!(lines.get(i).kind() instanceof LineKind.Comment)) {
                return false;
            }
            if (lines.get(i)
                    .text()
                    .toLowerCase(Locale.ROOT)
                    .contains(problem.name().toLowerCase(Locale.ROOT))) {
                return true;
            }
        }
        return false;
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
