package bootmend.cli.json;

import bootmend.cli.outcome.CommandWords;
import bootmend.view.BoardExplanation;
import bootmend.view.CautionView;
import bootmend.view.Explanation;
import bootmend.view.KeyExplanation;
import bootmend.view.RuleExplanation;
import bootmend.view.ThrottleExplanation;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.OptionalLong;

/** An explanation as a JSON document: {@code kind} names the one other field that is there. */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ExplainJson(
        String kind, KeyJson key, BoardExplanation board, RuleJson rule, ThrottleExplanation throttle) {

    /** A rule of the check; what to do is said in commands. */
    record RuleJson(String rule, List<String> severities, String meaning, String remedy, String source) {

        static RuleJson of(RuleExplanation rule) {
            return new RuleJson(
                    rule.rule(),
                    rule.severities(),
                    rule.meaning(),
                    CommandWords.withoutCard().remedy(rule.remedy(), rule.steps()),
                    rule.source());
        }
    }

    /** A tuning key; {@code min} and {@code max} are null where none is published. */
    record KeyJson(
            String key,
            String group,
            String unit,
            String meaning,
            Long min,
            Long max,
            boolean clamped,
            String boards,
            List<String> sets,
            boolean resets,
            List<KeyExplanation.StockOnBoard> stock,
            String note,
            List<CautionView> cautions,
            String source) {

        public static KeyJson of(KeyExplanation key) {
            return new KeyJson(
                    key.key(),
                    key.group(),
                    key.unit(),
                    key.meaning(),
                    boxed(key.min()),
                    boxed(key.max()),
                    key.clamped(),
                    key.boards(),
                    key.sets(),
                    key.resets(),
                    key.stock(),
                    key.note(),
                    key.cautions(),
                    key.source());
        }

        private static Long boxed(OptionalLong number) {
            return number.isPresent() ? number.getAsLong() : null;
        }
    }

    public static ExplainJson of(Explanation explanation) {
        if (explanation instanceof KeyExplanation key) {
            return new ExplainJson("key", KeyJson.of(key), null, null, null);
        } else if (explanation instanceof BoardExplanation board) {
            return new ExplainJson("board", null, board, null, null);
        } else if (explanation instanceof RuleExplanation rule) {
            return new ExplainJson("rule", null, null, RuleJson.of(rule), null);
        }
        return new ExplainJson("throttle", null, null, null, (ThrottleExplanation) explanation);
    }
}
