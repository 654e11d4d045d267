package bootmend.cli.json;

import bootmend.finding.Finding;
import bootmend.operation.CardChange;
import bootmend.operation.ChangeView;
import bootmend.operation.LineChange;
import bootmend.operation.PlanView;
import bootmend.operation.ProposedChange;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;

/**
 * A change as a JSON document: the card as it was before, what a repair found, the lines, the plan, and, once it was made,
 * the change; field names are part of the interface.
 */
public record ChangeJson(
        @JsonUnwrapped CardJson before,
        List<FindingJson> findings,
        List<LineJson> lines,
        PlanView plan,
        @JsonInclude(JsonInclude.Include.NON_NULL) ChangeView change) {

    /** One line; {@code before} is null for a new line, {@code after} for one that is taken out. */
    public record LineJson(String file, int line, String before, String after) {

        public static LineJson of(LineChange line) {
            return new LineJson(
                    line.file(),
                    line.line(),
                    line.before().orElse(null),
                    line.after().orElse(null));
        }
    }

    /** One thing that a repair found; {@code mended} tells whether this repair mends it. */
    public record FindingJson(String id, String where, String what, boolean mended) {

        static FindingJson of(Finding finding) {
            return new FindingJson(finding.id(), finding.where().words(), finding.words(), finding.isRepaired());
        }
    }

    public static ChangeJson of(CardChange change) {
        return new ChangeJson(
                CardJson.of(change.before()),
                change.findings().stream().map(FindingJson::of).toList(),
                change.lines().stream().map(LineJson::of).toList(),
                change.plan(),
                change.made().orElse(null));
    }

    public static ChangeJson planned(ProposedChange change) {
        return made(change, null);
    }

    public static ChangeJson made(ProposedChange change, ChangeView done) {
        return new ChangeJson(
                CardJson.of(change.card()),
                change.findings().stream().map(FindingJson::of).toList(),
                change.lines().stream().map(LineJson::of).toList(),
                change.plan(),
                done);
    }
}
