package bootmend.cli.json;

import bootmend.card.PartitionView;
import bootmend.cli.outcome.CheckedCard;
import bootmend.cli.outcome.CommandWords;
import bootmend.finding.Finding;
import bootmend.finding.Severity;
import bootmend.view.CheckView;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/** A check of a card as JSON; its field names are part of the interface. */
public final class CheckJson {

    private CheckJson() {}

    /** One card; where it could not be checked, only {@code card} and {@code error} are there. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record CardJson(
            String card,
            String kind,
            Long bytes,
            PartitionView partition,
            ConfigJson config,
            List<String> boards,
            Boolean boardsGiven,
            String checkedAt,
            Boolean ready,
            Integer blockers,
            Integer warnings,
            Integer notes,
            List<FindingJson> findings,
            ErrorJson.Told error) {}

    /** One finding; {@code line} is null where it is not about one line. */
    record FindingJson(
            String rule,
            String severity,
            String path,
            Integer line,
            String what,
            List<String> boards,
            String meaning,
            String remedy,
            String source) {

        static FindingJson of(String card, Finding finding) {
            return new FindingJson(
                    finding.id(),
                    finding.severity().word(),
                    finding.where().path(),
                    finding.where().line().isPresent() ? finding.where().line().getAsInt() : null,
                    finding.what(),
                    finding.boards(),
                    finding.rule().meaning(),
                    CommandWords.about(card).remedy(finding.rule().remedy(), finding.rule().steps()),
                    finding.rule().source());
        }
    }

    public static CardJson card(CheckedCard checked) {
        if (checked.error().isPresent()) {
            return new CardJson(
                    checked.name(),
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    ErrorJson.error(checked.name(), checked.error().get()));
        }
        CheckView view = checked.view().orElseThrow();
        return new CardJson(
                view.card().card(),
                view.card().kind(),
                view.card().bytes(),
                view.card().partition(),
                view.card().config().map(ConfigJson::of).orElse(null),
                view.boards(),
                view.boardsGiven(),
                view.when().toString(),
                !view.hasBlocker(),
                view.count(Severity.BLOCKER),
                view.count(Severity.WARNING),
                view.count(Severity.NOTE),
                view.findings().stream()
                        .map(finding -> FindingJson.of(view.card().card(), finding))
                        .toList(),
                null);
    }
}
