package bootmend.cli.json;

import bootmend.batch.CardResult;
import bootmend.card.PartitionView;
import bootmend.check.Finding;
import bootmend.check.Severity;
import bootmend.view.CheckView;
import bootmend.view.ConfigView;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

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
        List<Finding> findings) {

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
                view.findings());
    }
}
