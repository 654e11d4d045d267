package bootmend.cli.report;

import bootmend.cli.json.ChangeJson;
import bootmend.cli.json.ErrorJson;
import bootmend.cli.outcome.ExitCode;
import bootmend.finding.Finding;
import bootmend.operation.Made;
import bootmend.page.CardOutcome;
import bootmend.view.ConfigView;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Optional;

/**
 * One card's line in a batch's report as JSON; its field names are part of the interface.
 *
 * @param state what became of the card
 * @param was what it was before; missing where it could not be read
 * @param changed the lines that were changed, or would be
 * @param verified whether a change was made, forced and read back as planned
 * @param undoRecord where the undo record of a change lies
 * @param seconds from its start to its end
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record CardReport(
        String card,
        String state,
        Was was,
        List<ChangeJson.LineJson> changed,
        boolean verified,
        Boolean secondReader,
        List<FindingLine> findings,
        String undoRecord,
        double seconds,
        ErrorJson.Told error,
        int exitCode) {

    /** What a card was when it was opened. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Was(
            String label,
            String serial,
            String fatType,
            String config,
            Integer configBytes,
            String configSha256,
            boolean stock,
            long activeLines) {

        static Was of(CardOutcome.Was was) {
            Optional<ConfigView> config = was.config();
            return new Was(
                    was.label(),
                    was.serial(),
                    was.fatType(),
                    config.map(ConfigView::path).orElse(null),
                    config.map(ConfigView::bytes).orElse(null),
                    config.map(ConfigView::sha256).orElse(null),
                    was.stock(),
                    was.activeLines());
        }
    }

    /** One finding of a check or a repair; {@code repaired} is there for a repair. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record FindingLine(String id, String severity, String where, String what, Boolean repaired) {

        static FindingLine of(CardOutcome card, Finding finding) {
            return new FindingLine(
                    finding.id(),
                    card.isCheck() ? finding.severity().word() : null,
                    finding.where().words(),
                    card.told(finding),
                    card.isCheck() ? null : finding.isRepaired());
        }
    }

    static CardReport of(CardOutcome card) {
        return new CardReport(
                card.card(),
                card.state().words(),
                card.was().map(Was::of).orElse(null),
                card.changed().stream().map(ChangeJson.LineJson::of).toList(),
                card.verified(),
                card.made()
                        .map(made -> ChangeJson.MadeJson.of(made).secondReader())
                        .orElse(null),
                card.findings().stream()
                        .map(finding -> FindingLine.of(card, finding))
                        .toList(),
                card.made().map(Made::record).orElse(null),
                card.seconds(),
                card.error().map(error -> ErrorJson.error(card.card(), error)).orElse(null),
                ExitCode.of(card));
    }
}
