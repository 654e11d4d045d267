package bootmend.cli.report;

import bootmend.CardException;
import bootmend.batch.CardResult;
import bootmend.cli.outcome.CommandWords;
import bootmend.finding.Finding;
import bootmend.finding.Purpose;
import bootmend.view.CheckView;
import bootmend.view.ConfigView;
import java.util.ArrayList;
import java.util.List;

/**
 * A check as rows of a table, one a finding; a card without one has a row of severity {@code none}, a card that could not
 * be checked one of severity {@code error}.
 */
public final class CheckRows {

    public static final List<String> HEADER = List.of(
            "card",
            "label",
            "serial",
            "config_sha256",
            "purpose",
            "checked_at",
            "severity",
            "rule",
            "path",
            "line",
            "boards",
            "what",
            "meaning",
            "remedy",
            "source");

    private final Purpose purpose;

    public CheckRows(Purpose purpose) {
        this.purpose = purpose;
    }

    public List<List<String>> of(CardResult<CheckView> card) {
        String name = card.card().toString();
        return card.view().map(view -> rows(name, view)).orElseGet(() -> {
            CardException error = card.error().orElseThrow();
            List<String> unread = List.of(name, "", "", "", purpose.word(), "");
            return List.of(row(unread, "error", "", "", "", "", error.getMessage(), "", error.remedy(), ""));
        });
    }

    private List<List<String>> rows(String name, CheckView view) {
        List<String> card = List.of(
                name,
                view.card().partition().label(),
                view.card().partition().serial(),
                view.card().config().map(ConfigView::sha256).orElse(""),
                purpose.word(),
                view.when().toString());
        return view.findings().isEmpty()
                ? List.of(row(card, "none", "", "", "", "", "", "", "", ""))
                : view.findings().stream().map(finding -> row(card, finding)).toList();
    }

    private static List<String> row(List<String> card, Finding finding) {
        return row(
                card,
                finding.severity().word(),
                finding.id(),
                finding.where().path(),
                finding.where().line().isPresent()
                        ? Integer.toString(finding.where().line().getAsInt())
                        : "",
                String.join(" ", finding.boards()),
                finding.what(),
                finding.rule().meaning(),
                CommandWords.about(card.get(0))
                        .remedy(finding.rule().remedy(), finding.rule().steps()),
                finding.rule().source());
    }

    private static List<String> row(List<String> card, String... more) {
        List<String> row = new ArrayList<>(card);
        row.addAll(List.of(more));
        return row;
    }
}
