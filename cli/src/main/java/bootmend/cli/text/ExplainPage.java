package bootmend.cli.text;

import bootmend.cli.outcome.CommandWords;
import bootmend.page.Amount;
import bootmend.view.BoardExplanation;
import bootmend.view.Explanation;
import bootmend.view.KeyExplanation;
import bootmend.view.RuleExplanation;
import bootmend.view.ThrottleExplanation;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;

/** Prints explanations. */
public final class ExplainPage {

    private static final int NAME_WIDTH = 14;
    private static final String NO_BITS = "0x0";

    private final Screen screen;

    public ExplainPage(Screen screen) {
        this.screen = screen;
    }

    public void print(Explanation explanation) {
        if (explanation instanceof KeyExplanation key) {
            key(key);
        } else if (explanation instanceof BoardExplanation board) {
            board(board);
        } else if (explanation instanceof RuleExplanation rule) {
            rule(rule);
        } else if (explanation instanceof ThrottleExplanation report) {
            report(report);
        }
    }

    private void key(KeyExplanation key) {
        screen.line("bold", key.key());
        field("meaning", key.meaning());
        field("group, unit", key.group() + ", " + (key.unit().equals("flag") ? "0 or 1" : key.unit()));
        field("range", range(key));
        field("read by", key.boards().equals("all") ? "every board" : key.boards());
        if (!key.sets().isEmpty()) {
            field("sets", String.join(" ", key.sets()));
        }
        field("reset", key.resets() ? "back to stock takes its lines out" : "back to stock leaves its lines alone");
        Map<String, String> boards = new LinkedHashMap<>();
        key.stock().forEach(each -> boards.merge(each.stock(), each.board(), (all, one) -> all + " " + one));
        String name = "stock";
        for (Map.Entry<String, String> each : boards.entrySet()) {
            field(
                    name,
                    boards.size() == 1 ? each.getKey() + " on every board" : each.getKey() + " on " + each.getValue());
            name = "";
        }
        if (!key.note().isEmpty()) {
            field("note", key.note());
        }
        field("source", key.source());
        new CautionPage(screen).print(key.cautions());
    }

    private static String range(KeyExplanation key) {
        OptionalLong min = key.min();
        OptionalLong max = key.max();
        String clamped = key.clamped() ? "; above counts as " + max.orElse(0) : "";
        if (min.isPresent() && max.isPresent()) {
            return min.getAsLong() + " to " + max.getAsLong() + clamped;
        }
        return max.isPresent() ? "up to " + max.getAsLong() + clamped : "not published";
    }

    private void board(BoardExplanation board) {
        screen.line("bold", board.board());
        field("chip", board.chip());
        field("reads", "sections " + String.join(" ", board.filters()));
        field("type numbers", String.join(" ", board.types()));
        field("warranty bit", board.warrantyBit());
        String name = "boot files";
        for (String file : board.bootFiles()) {
            field(name, file);
            name = "";
        }
        if (!board.note().isEmpty()) {
            field("note", board.note());
        }
        screen.blank();
        screen.table(
                List.of("key", "stock in MHz"),
                board.stock().stream()
                        .map(each -> List.of(each.key(), each.stock()))
                        .toList());
        if (!board.volts().isEmpty()) {
            screen.blank();
            screen.table(
                    List.of("key", "lowest step", "stock", "highest step", "a step"),
                    board.volts().stream().map(ExplainPage::volts).toList());
        }
        screen.blank();
        sources(board.sources());
        new CautionPage(screen).print(board.cautions());
    }

    private static List<String> volts(BoardExplanation.VoltsView each) {
        return List.of(
                each.key(),
                each.min() + " = " + Amount.volts(each.minVolts(), false),
                "0 = " + Amount.volts(each.stockVolts(), false),
                each.max() + " = " + Amount.volts(each.maxVolts(), false),
                Amount.volts(each.stepVolts(), false));
    }

    private void rule(RuleExplanation rule) {
        screen.line("bold", rule.rule());
        field("severity", String.join(", ", rule.severities()));
        field("meaning", rule.meaning());
        field("what to do", CommandWords.withoutCard().remedy(rule.remedy(), rule.steps()));
        field("source", rule.source());
    }

    private void report(ThrottleExplanation report) {
        screen.line("bold", "Throttle report " + report.mask());
        boolean unknown = !report.unknown().equals(NO_BITS);
        if (report.bits().isEmpty() && !unknown) {
            screen.line("Nothing was held back and the supply was good, now and since boot.");
        }
        report.bits().forEach(bit -> field("bit " + bit.bit(), bit.meaning()));
        if (unknown) {
            field("unknown", "bits " + report.unknown() + " have no published meaning");
        }
        field("source", report.source());
        new CautionPage(screen).print(report.cautions());
    }

    private void sources(List<String> sources) {
        String name = sources.size() == 1 ? "source" : "sources";
        for (String source : sources) {
            field(name, source);
            name = "";
        }
    }

    private void field(String name, String text) {
        screen.paragraph(name, NAME_WIDTH, text);
    }
}
