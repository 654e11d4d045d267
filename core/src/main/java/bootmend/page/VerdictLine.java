package bootmend.page;

import bootmend.boot.BoardDiagnosis;
import bootmend.boot.BootChain;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.Verdict;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What a boot chain comes to, in few words. */
public final class VerdictLine {

    private static final int MOST_SENTENCES = 2;

    private VerdictLine() {}

    /**
     * One line on a look at names and settings alone, where a card stops first and on which boards; safe to show.
     *
     * @param diagnosis at any depth
     */
    public static String verdict(BootDiagnosis diagnosis) {
        Map<String, List<String>> stops = new LinkedHashMap<>();
        Map<String, List<String>> unknown = new LinkedHashMap<>();
        List<String> others = new ArrayList<>();
        for (BoardDiagnosis board : diagnosis.boards()) {
            BootChain chain = board.chain();
            if (chain.verdict() instanceof Verdict.Stops stop) {
                stops.computeIfAbsent(
                                "stops at the " + stop.cause().link().word() + "%s: "
                                        + end(stop.cause().sentence()),
                                none -> new ArrayList<>())
                        .add(board.board());
            } else if (chain.verdict() instanceof Verdict.Unknown open) {
                unknown.computeIfAbsent(
                                "cannot be told%s: the " + open.link().word() + ", " + open.why(),
                                none -> new ArrayList<>())
                        .add(board.board());
            } else {
                others.add(board.board());
            }
        }
        if (stops.isEmpty() && unknown.isEmpty()) {
            return "nothing that " + (diagnosis.boards().size() == 1 ? "the board needs" : "these boards need")
                    + " is missing by name.";
        }
        List<String> sentences = new ArrayList<>(sentences(stops, diagnosis));
        if (stops.isEmpty()) {
            sentences.addAll(sentences(unknown, diagnosis));
        }
        int left = diagnosis.boards().size() - others.size() - told(stops.isEmpty() ? unknown : stops);
        if (left > 0) {
            sentences.add("not so on " + Amount.count(left, "other board") + " either");
        }
        if (!others.isEmpty()) {
            sentences.add("on " + boards(others) + " nothing is missing by name");
        }
        return String.join("; ", sentences) + ".";
    }

    /**
     * What a look at names alone leaves open, in a clause.
     *
     * @param build whether the firmware's build was looked at all the same
     */
    public static String notLookedAt(boolean build) {
        return "Not looked at: what the boot files hold, the command line, the root"
                + (build ? "" : ", which firmware it is");
    }

    private static int told(Map<String, List<String>> groups) {
        return groups.values().stream()
                .limit(MOST_SENTENCES)
                .mapToInt(List::size)
                .sum();
    }

    private static List<String> sentences(Map<String, List<String>> groups, BootDiagnosis diagnosis) {
        return groups.entrySet().stream()
                .limit(MOST_SENTENCES)
                .map(each -> each.getKey()
                        .replaceFirst(
                                "%s",
                                each.getValue().size() == diagnosis.boards().size()
                                        ? ""
                                        : " on " + boards(each.getValue())))
                .collect(Collectors.toList());
    }

    private static String boards(List<String> boards) {
        return String.join(" ", boards);
    }

    private static String end(String sentence) {
        return sentence.replaceFirst("\\.$", "");
    }
}
