package bootmend.cli.json;

import bootmend.cli.outcome.CommandWords;
import bootmend.view.BoardExplanation;
import bootmend.view.Explanation;
import bootmend.view.KeyExplanation;
import bootmend.view.RuleExplanation;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** An explanation as a JSON document: {@code kind} names the one other field that is there. */
public final class ExplainJson {

    private ExplainJson() {}

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

    public static Map<String, Object> of(Explanation explanation) {
        String kind = kind(explanation);
        Map<String, Object> document = new LinkedHashMap<>();
        document.put("kind", kind);
        document.put(kind, explanation instanceof RuleExplanation rule ? RuleJson.of(rule) : explanation);
        return document;
    }

    private static String kind(Explanation explanation) {
        if (explanation instanceof KeyExplanation) {
            return "key";
        } else if (explanation instanceof BoardExplanation) {
            return "board";
        }
        return explanation instanceof RuleExplanation ? "rule" : "throttle";
    }
}
