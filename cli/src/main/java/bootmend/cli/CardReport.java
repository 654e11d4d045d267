package bootmend.cli;

import bootmend.CardException;
import bootmend.job.CardChange;
import bootmend.job.CardResult;
import bootmend.job.CardView;
import bootmend.job.ChangeView;
import bootmend.job.CheckView;
import bootmend.job.ConfigView;
import bootmend.job.ShowView;
import bootmend.page.Amount;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One card's line in a batch's report; its field names are part of the interface.
 *
 * @param state what became of the card
 * @param was what it was before; missing where it could not be read
 * @param changed the lines that were changed, or would be
 * @param verified whether a change was made, forced and read back as planned
 * @param undoRecord where the undo record of a change lies
 * @param seconds from its start to its end
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record CardReport(String card, CardState state, Was was, List<ChangeJson.LineJson> changed, boolean verified,
        Boolean secondReader, List<FindingLine> findings, String undoRecord, double seconds, ErrorJson.Error error,
        int exitCode) {

    private static final double MILLIS = 1000;

    /** What a card was when it was opened. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Was(String label, String serial, String fatType, String config, Integer configBytes, String configSha256,
            boolean stock, long activeLines) {

        static Was of(CardView card) {
            Optional<ConfigView> config = card.config();
            return new Was(card.partition().label(), card.partition().serial(), card.partition().fatType(),
                    config.map(ConfigView::path).orElse(null), config.map(ConfigView::bytes).orElse(null),
                    config.map(ConfigView::sha256).orElse(null), card.isStock(),
                    card.tuning().stream().filter(line -> line.active() && line.resets()).count());
        }

        String words() {
            return (label.isEmpty() ? "no label" : label) + ", " + serial + ", "
                    + (config == null ? "no config file" : stock ? "stock" : Amount.count((int) activeLines, "tuning line"));
        }
    }

    /** One finding of a check or a repair; {@code mended} is there for a repair. */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record FindingLine(String id, String severity, String where, String what, Boolean mended) {
    }

    static CardReport ofShow(CardResult<ShowView> result) {
        return result.view().map(view -> seen(result, view.card(), CardState.SEEN, List.of(), codeOf(view.card())))
                .orElseGet(() -> failed(result));
    }

    static CardReport ofCheck(CardResult<CheckView> result) {
        return result.view().map(view -> seen(result, view.card(),
                view.hasBlocker() ? CardState.NOT_READY : CardState.READY,
                view.findings().stream().map(finding -> new FindingLine(finding.rule(), finding.severity().word(),
                        finding.where().words(), finding.what(), null)).toList(),
                view.hasBlocker() ? ExitCode.BLOCKER : ExitCode.DONE)).orElseGet(() -> failed(result));
    }

    static CardReport ofChange(CardResult<CardChange> result) {
        return result.view().map(view -> changed(result, view)).orElseGet(() -> failed(result));
    }

    private static int codeOf(CardView card) {
        return card.configProblem().map(ExitCode::of).orElse(ExitCode.DONE);
    }

    private static CardReport seen(CardResult<?> result, CardView card, CardState state, List<FindingLine> findings,
            int code) {
        return new CardReport(result.card().toString(), state, Was.of(card), List.of(), false, null, findings, null,
                seconds(result), card.configProblem().map(ErrorJson::error).orElse(null), code);
    }

    private static CardReport changed(CardResult<?> result, CardChange view) {
        Optional<ChangeView> made = view.made();
        CardState state = made.isPresent() ? CardState.CHANGED : view.nothing() ? CardState.NOTHING : CardState.PLANNED;
        return new CardReport(result.card().toString(), state, Was.of(view.before()),
                view.lines().stream().map(ChangeJson.LineJson::of).toList(),
                made.map(ChangeView::verified).orElse(false), made.map(ChangeView::secondReader).orElse(null),
                view.findings().stream().map(finding -> new FindingLine(finding.id(), null, finding.where(),
                        finding.what(), finding.mended())).toList(),
                made.map(ChangeView::undoRecord).orElse(null), seconds(result), null,
                view.leavesDamage() ? ExitCode.BLOCKER : ExitCode.DONE);
    }

    private static CardReport failed(CardResult<?> result) {
        CardException error = result.error().orElseThrow();
        return new CardReport(result.card().toString(), result.started() ? CardState.FAILED : CardState.NOT_STARTED, null,
                List.of(), false, null, List.of(), null, seconds(result), ErrorJson.error(error), ExitCode.of(error));
    }

    private static double seconds(CardResult<?> result) {
        return Math.round(result.took().toNanos() / 1e9 * MILLIS) / MILLIS;
    }

    /** How many findings there are, such as {@code 1 blocker, 2 warnings}, or {@code 3 found, 2 mended}. */
    String findingWords() {
        if (findings.isEmpty()) {
            return "";
        }
        if (findings.get(0).mended() != null) {
            return findings.size() + " found, " + findings.stream().filter(FindingLine::mended).count() + " mended";
        }
        return Stream.of("blocker", "warning", "note")
                .map(this::count).filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
    }

    private String count(String severity) {
        int n = (int) findings.stream().filter(finding -> severity.equals(finding.severity())).count();
        return n == 0 ? "" : Amount.count(n, severity);
    }
}
