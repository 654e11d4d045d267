package bootmend.view;

import bootmend.CardException;
import bootmend.check.RuleBook;
import bootmend.finding.Purpose;
import bootmend.finding.Rule;
import bootmend.finding.Severity;
import bootmend.request.NearWords;
import bootmend.tuning.Board;
import bootmend.tuning.Source;
import bootmend.tuning.ThrottleBit;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningTables;
import bootmend.workplace.Workplace;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Explains a tuning key, a board, a rule or a throttle report. */
public final class ExplainJob {

    private static final Pattern REPORT = Pattern.compile("(?:throttled=)?0[xX]([0-9a-fA-F]{1,8})");
    private static final String REPORT_SOURCE = "S4";
    private static final String REPORT_TOPIC = "throttle";
    private static final int HEX = 16;

    private final TuningTables tables;
    private final RuleBook rules;

    public ExplainJob(Workplace workplace) {
        this.tables = workplace.tables();
        this.rules = RuleBook.load(tables.sources());
    }

    /**
     * @param word a key such as {@code arm_freq}, a board such as {@code pi4}, a rule's id, or a report such as
     *     {@code 0x50005}
     * @throws CardException of kind usage, with words that are near, where it is none of these
     */
    public Explanation run(String word) throws CardException {
        return key(word)
                .or(() -> board(word))
                .or(() -> report(word))
                .or(() -> rule(word))
                .orElseThrow(() -> unknown(word));
    }

    private Optional<Explanation> key(String word) {
        return tables.vocabulary()
                .findIgnoringCase(word)
                .or(() -> tables.vocabulary().findIgnoringCase("dtparam=" + word))
                .map(new KeyExplainer(tables)::explain);
    }

    private Optional<Explanation> board(String word) {
        return tables.boards().find(word).map(new BoardExplainer(tables)::explain);
    }

    private Optional<Explanation> report(String word) {
        Matcher matcher = REPORT.matcher(word);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        long report = Long.parseLong(matcher.group(1), HEX);
        List<ThrottleBit> bits = tables.throttleBits().decode(report);
        return Optional.of(new ThrottleExplanation(
                "0x" + Long.toHexString(report),
                bits.stream()
                        .map(bit -> new ThrottleExplanation.BitView(bit.bit(), bit.meaning()))
                        .toList(),
                "0x" + Long.toHexString(tables.throttleBits().unknown(report)),
                bits.isEmpty() ? List.of() : CautionView.of(tables.cautions().about(REPORT_TOPIC)),
                tables.sources().find(REPORT_SOURCE).map(Source::citation).orElseThrow()));
    }

    private Optional<Explanation> rule(String word) {
        return rules.find(word.toLowerCase(Locale.ROOT))
                .map(rule -> new RuleExplanation(
                        rule.id(),
                        Stream.of(Purpose.values())
                                .map(purpose -> purpose.word() + ": "
                                        + rule.severity(purpose)
                                                .map(Severity::word)
                                                .orElse("does not matter"))
                                .toList(),
                        rule.meaning(),
                        rule.remedy(),
                        rule.steps(),
                        rule.source()));
    }

    private CardException unknown(String word) {
        List<String> known = Stream.of(
                        tables.vocabulary().keys().stream().map(TuningKey::key),
                        tables.boards().all().stream().map(Board::id),
                        rules.all().stream().map(Rule::id))
                .flatMap(words -> words)
                .toList();
        List<String> near = new NearWords(known).to(word);
        return CardException.usage(
                "bootmend has no explanation for " + word,
                near.isEmpty()
                        ? "Give a tuning key such as arm_freq, a board such as pi4, a rule's name, or a throttle report such as "
                                + "0x50005."
                        : "Did you mean " + String.join(", ", near) + "?");
    }
}
