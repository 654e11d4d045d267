package bootmend.page;

import bootmend.CardException;
import bootmend.batch.CardResult;
import bootmend.finding.Finding;
import bootmend.finding.Severity;
import bootmend.operation.ChangeOutcome;
import bootmend.operation.LineChange;
import bootmend.operation.Made;
import bootmend.operation.ProposedChange;
import bootmend.view.CardView;
import bootmend.view.CheckView;
import bootmend.view.ConfigView;
import bootmend.view.ShowView;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * One card's line in a batch's report. Texts are as the card has them, control characters included.
 *
 * @param card as the user named it
 * @param state what became of it
 * @param was what it was before; empty where it could not be read
 * @param changed the lines that were changed, or would be
 * @param made the change; empty where none was made
 * @param findings of a check, or of a repair
 * @param seconds from its start to its end, to the millisecond
 * @param error why it failed, or why its config file could not be read
 * @param wantsAttention whether something is left to do: it failed, is not ready, or keeps damage
 */
public record CardOutcome(
        String card,
        CardState state,
        Optional<Was> was,
        List<LineChange> changed,
        Optional<Made> made,
        List<Finding> findings,
        double seconds,
        Optional<CardException> error,
        boolean wantsAttention) {

    private static final double MILLIS = 1000;

    public CardOutcome {
        changed = List.copyOf(changed);
        findings = List.copyOf(findings);
    }

    /**
     * What a card was when it was opened.
     *
     * @param stock whether no line that resets was active
     * @param activeLines how many were
     */
    public record Was(
            String label, String serial, String fatType, Optional<ConfigView> config, boolean stock, long activeLines) {

        static Was of(CardView card) {
            return new Was(
                    card.partition().label(),
                    card.partition().serial(),
                    card.partition().fatType(),
                    card.config().map(ConfigView::hashed),
                    card.isStock(),
                    card.tuning().stream()
                            .filter(line -> line.active() && line.resets())
                            .count());
        }

        /** Such as {@code LAB, 0000-BEEF, 2 tuning lines}. */
        public String words() {
            String lines = stock ? "stock" : Amount.count(activeLines, "tuning line");
            String volume = fatType.isEmpty() ? "config file" : (label.isEmpty() ? "no label" : label) + ", " + serial;
            return volume + ", " + (config.isEmpty() ? "no config file" : lines);
        }
    }

    /** Whether it was checked: then a finding is told by how heavy it is, else by whether a repair repairs it. */
    public boolean isCheck() {
        return state == CardState.READY || state == CardState.NOT_READY;
    }

    /** What {@code finding} says of this card: a check tells what its rule means elsewhere, a repair at once. */
    public String told(Finding finding) {
        return isCheck() ? finding.what() : finding.words();
    }

    /** Such as {@code warning over-voltage: config.txt line 7: ...}. */
    public String words(Finding finding) {
        String repaired = finding.isRepaired() ? "repaired" : "not repaired";
        return (isCheck() ? finding.severity().word() : repaired) + " " + finding.id() + ": "
                + finding.where().words() + ": " + told(finding);
    }

    public static CardOutcome ofShow(CardResult<ShowView> result) {
        return result.view()
                .map(view -> seen(
                        result,
                        view.card(),
                        CardState.SEEN,
                        List.of(),
                        view.card().configProblem().isPresent()))
                .orElseGet(() -> failed(result));
    }

    /** A card that was looked at alone, for no board. */
    public static CardOutcome ofCard(CardResult<CardView> result) {
        return result.view()
                .map(view -> seen(
                        result,
                        view,
                        CardState.SEEN,
                        List.of(),
                        view.configProblem().isPresent()))
                .orElseGet(() -> failed(result));
    }

    public static CardOutcome ofCheck(CardResult<CheckView> result) {
        return result.view()
                .map(view -> seen(
                        result,
                        view.card(),
                        view.hasBlocker() ? CardState.NOT_READY : CardState.READY,
                        view.findings(),
                        view.hasBlocker()))
                .orElseGet(() -> failed(result));
    }

    /** A change that was made, or only worked out. */
    public static CardOutcome ofChange(CardResult<ChangeOutcome> result) {
        return result.view().map(view -> changed(result, view)).orElseGet(() -> failed(result));
    }

    private static CardOutcome seen(
            CardResult<?> result, CardView card, CardState state, List<Finding> findings, boolean wantsAttention) {
        return new CardOutcome(
                result.card().toString(),
                state,
                Optional.of(Was.of(card)),
                List.of(),
                Optional.empty(),
                findings,
                seconds(result),
                card.configProblem(),
                wantsAttention);
    }

    private static CardOutcome changed(CardResult<?> result, ChangeOutcome outcome) {
        ProposedChange view = outcome.change();
        CardState planned = view.isNothing() ? CardState.NOTHING : CardState.PLANNED;
        return new CardOutcome(
                result.card().toString(),
                outcome.ifMade().isPresent() ? CardState.CHANGED : planned,
                Optional.of(Was.of(view.before())),
                view.lines(),
                outcome.ifMade(),
                view.findings(),
                seconds(result),
                Optional.empty(),
                view.leavesDamage());
    }

    private static CardOutcome failed(CardResult<?> result) {
        return new CardOutcome(
                result.card().toString(),
                result.started() ? CardState.FAILED : CardState.NOT_STARTED,
                Optional.empty(),
                List.of(),
                Optional.empty(),
                List.of(),
                seconds(result),
                Optional.of(result.error().orElseThrow()),
                true);
    }

    private static double seconds(CardResult<?> result) {
        return Math.round(result.took().toNanos() / 1e9 * MILLIS) / MILLIS;
    }

    /** Whether a change was made, synced to the card and read back from it; not so in a mounted folder. */
    public boolean verified() {
        return made.filter(Made.OnCard.class::isInstance).isPresent();
    }

    /** Each changed line, such as {@code config.txt line 2: arm_freq=2000 -> #arm_freq=2000}. */
    public List<String> changedWords() {
        return changed.stream()
                .map(line -> line.file() + " line " + line.line() + ": "
                        + line.before().orElse("(new)") + " -> " + line.after().orElse("(taken out)"))
                .toList();
    }

    /** How many findings there are, such as {@code 1 blocker, 2 warnings}, or {@code 3 found, 2 repaired}. */
    public String findingCounts() {
        if (findings.isEmpty()) {
            return "";
        }
        if (!isCheck()) {
            return findings.size() + " found, "
                    + findings.stream().filter(Finding::isRepaired).count() + " repaired";
        }
        return Stream.of(Severity.BLOCKER, Severity.WARNING, Severity.NOTE)
                .map(this::count)
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
    }

    private String count(Severity severity) {
        int n = (int) findings.stream()
                .filter(finding -> finding.severity() == severity)
                .count();
        return n == 0 ? "" : Amount.count(n, severity.word());
    }
}
