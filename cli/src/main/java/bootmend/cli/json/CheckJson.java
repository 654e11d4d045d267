package bootmend.cli.json;

import bootmend.batch.CardResult;
import bootmend.card.PartitionView;
import bootmend.cli.outcome.CommandWords;
import bootmend.finding.Finding;
import bootmend.finding.Severity;
import bootmend.view.CheckView;
import bootmend.view.ConfigView;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** A check of a card as JSON; its field names are part of the interface. */
public record CheckJson(
        String card,
        String kind,
        long bytes,
        PartitionView partition,
        Optional<ConfigView> config,
        List<String> boards,
        boolean boardsGiven,
        Instant checkedAt,
        boolean ready,
        int blockers,
        int warnings,
        int notes,
        List<FindingJson> findings,
        List<DiagnoseJson.Firmware> firmware) {

    /** One finding; {@code line} is null where it is not about one line, and what to do is said in commands. */
    record FindingJson(
            String rule,
            String severity,
            String path,
            OptionalInt line,
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
                    finding.where().line(),
                    finding.what(),
                    finding.boards(),
                    finding.rule().meaning(),
                    CommandWords.about(card)
                            .remedy(finding.rule().remedy(), finding.rule().steps()),
                    finding.rule().source());
        }
    }

    /** A card; where it could not be checked, only {@code card} and {@code error} are there. */
    public static Object of(CardResult<CheckView> checked) {
        return checked.view()
                .<Object>map(CheckJson::of)
                .orElseGet(() ->
                        ErrorJson.of(checked.card().toString(), checked.error().orElseThrow()));
    }

    private static CheckJson of(CheckView view) {
        return new CheckJson(
                view.card().card(),
                view.card().kind(),
                view.card().bytes(),
                view.card().partition(),
                view.card().config(),
                view.boards(),
                view.boardsGiven(),
                view.when(),
                !view.hasBlocker(),
                view.count(Severity.BLOCKER),
                view.count(Severity.WARNING),
                view.count(Severity.NOTE),
                view.findings().stream()
                        .map(finding -> FindingJson.of(view.card().card(), finding))
                        .toList(),
                view.firmware().stream().map(DiagnoseJson.Firmware::of).toList());
    }
}
