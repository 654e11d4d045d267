package bootmend.check;

import bootmend.finding.Finding;
import bootmend.finding.Purpose;
import bootmend.finding.Rule;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Stream;

/** Runs every check on a card's content and says what its rules make of it for a purpose. */
public final class Checker {

    /** How many findings of one rule are given. No source: a bound against hostile cards. */
    public static final int MOST_OF_A_RULE = 25;

    private final RuleBook rules;
    private final List<String> boardOrder;
    private final List<Check> checks;

    public Checker(TuningTables tables) {
        this.rules = RuleBook.load(tables.sources());
        this.boardOrder = tables.boards().all().stream().map(Board::id).toList();
        this.checks = List.of(
                new UpdateCheck(tables.vocabulary(), UpdateFiles.load(tables)),
                new TrialFileCheck(tables.vocabulary()),
                new LeftFileCheck(LeftFiles.load()),
                new OneTimeCheck(tables),
                new LimitCheck(tables),
                new BootChainCheck(),
                new ConfigFileCheck(),
                new VolumeStateCheck(),
                new ActiveLineCheck(tables.vocabulary()),
                new VoltageCheck(tables.vocabulary()),
                new ClockCheck(tables.vocabulary(), tables.stock()),
                new UseCheck(tables.vocabulary()),
                new NumberCheck(tables.vocabulary()),
                new SpellingCheck(tables.vocabulary()),
                new SectionCheck(tables.boards(), tables.filters()),
                new RepeatCheck(),
                new IncludeCheck(),
                new PracticeCheck(tables.vocabulary()));
    }

    public RuleBook rules() {
        return rules;
    }

    /** Everything found that matters for the purpose: the heaviest first, within that in the rules' order. */
    public List<Finding> check(CardContent card, Purpose purpose) {
        return findings(card, rule -> rule.onlyFor(purpose));
    }

    /** Everything found that matters for any purpose, each as heavy as it is for the one that it matters most for. */
    public List<Finding> check(CardContent card) {
        return findings(card, Optional::of);
    }

    private List<Finding> findings(CardContent card, Function<Rule, Optional<Rule>> wanted) {
        List<Remark> remarks = bounded(merged(checks.stream().flatMap(check -> check.look(card).stream())));
        Comparator<Finding> order = Comparator.comparing(Finding::severity)
                .thenComparingInt(finding -> rules.all().indexOf(rule(finding.id())))
                .thenComparing(finding -> finding.where().path())
                .thenComparingInt(finding -> finding.where().line().orElse(0));
        return remarks.stream()
                .flatMap(remark -> wanted.apply(rule(remark.rule())).map(rule -> finding(remark, rule)).stream())
                .sorted(order)
                .toList();
    }

    private Rule rule(String id) {
        return rules.find(id).orElseThrow(() -> new IllegalStateException("rules.csv has no rule " + id));
    }

    private Finding finding(Remark remark, Rule rule) {
        return new Finding(
                rule,
                remark.where(),
                remark.what(),
                boardOrder.stream().filter(remark.boards()::contains).toList(),
                rule.fix());
    }

    /** One remark for all boards that it holds for alike. */
    private static List<Remark> merged(Stream<Remark> remarks) {
        Map<Remark, Set<String>> boards = new LinkedHashMap<>();
        remarks.forEach(remark -> boards.computeIfAbsent(
                        Remark.of(remark.rule(), remark.where(), remark.what()), none -> new TreeSet<>())
                .addAll(remark.boards()));
        return boards.entrySet().stream()
                .map(each -> new Remark(
                        each.getKey().rule(),
                        each.getKey().where(),
                        each.getKey().what(),
                        each.getValue()))
                .toList();
    }

    private static List<Remark> bounded(List<Remark> remarks) {
        Map<String, Integer> counts = new HashMap<>();
        remarks.forEach(remark -> counts.merge(remark.rule(), 1, Integer::sum));
        Map<String, Integer> given = new HashMap<>();
        List<Remark> kept = new ArrayList<>();
        for (Remark remark : remarks) {
            int number = given.merge(remark.rule(), 1, Integer::sum);
            int more = counts.get(remark.rule()) - MOST_OF_A_RULE;
            if (number < MOST_OF_A_RULE || number == MOST_OF_A_RULE && more == 0) {
                kept.add(remark);
            } else if (number == MOST_OF_A_RULE) {
                kept.add(new Remark(
                        remark.rule(),
                        remark.where(),
                        remark.what() + " The card has " + more + " more like this, which are left out here.",
                        remark.boards()));
            }
        }
        return kept;
    }
}
