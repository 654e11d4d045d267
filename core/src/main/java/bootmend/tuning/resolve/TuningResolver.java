package bootmend.tuning.resolve;

import bootmend.config.Condition;
import bootmend.config.ConfigReading;
import bootmend.config.LineKind;
import bootmend.config.ReachedLine;
import bootmend.config.Truth;
import bootmend.tuning.Assignment;
import bootmend.tuning.BoardStock;
import bootmend.tuning.Stock;
import bootmend.tuning.StockValues;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.Vocabulary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Stream;

/**
 * Works out the effective value of every tuning key from the lines that a board reads.
 *
 * <p>Source: "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446: a key that sets several is
 * overridden by the single keys, taken to be so whichever stands first; a setting that raises a stock value
 * ({@code arm_boost}) changes the default only, so a line with the key itself wins.
 */
final class TuningResolver {

    private final Vocabulary vocabulary;
    private final StockValues stock;
    private final BoardFacts facts;
    private final Map<String, List<Candidate>> own = new HashMap<>();
    /** Keys that nothing is known of but their names, in reading order. */
    private final Map<String, TuningKey> unpublished = new LinkedHashMap<>();

    TuningResolver(Vocabulary vocabulary, StockValues stock, BoardFacts facts, ConfigReading reading) {
        this.vocabulary = vocabulary;
        this.stock = stock;
        this.facts = facts;
        reading.lines().forEach(this::add);
    }

    private void add(ReachedLine line) {
        if (line.line().kind() instanceof LineKind.Setting setting
                && line.condition().truth() != Truth.FALSE) {
            for (Assignment each : Assignment.of(setting)) {
                vocabulary.findOnCard(each.key()).ifPresent(key -> add(key, each, line));
            }
        }
    }

    private void add(TuningKey key, Assignment each, ReachedLine line) {
        ValueCheck check = ValueCheck.of(key, each.value());
        own.computeIfAbsent(key.key(), name -> new ArrayList<>())
                .add(new Candidate(
                        key.key(), each.value(), check.value(), line.condition().and(check.condition()), line));
        if (!key.published()) {
            unpublished.put(key.key(), key);
        }
    }

    /** In the vocabulary's order, then what it has no name of; a key that sets several stands there only where the board ignores it. */
    List<Effective> effective() {
        if (own.isEmpty()) {
            return List.of();
        }
        return Stream.concat(vocabulary.keys().stream(), unpublished.values().stream())
                .flatMap(key -> effective(key).stream())
                .toList();
    }

    private Optional<Effective> effective(TuningKey key) {
        if (!isTouched(key)) {
            return Optional.empty();
        }
        KeyUse use = KeyUse.of(key, facts, stock);
        List<Candidate> single = own(key);
        if (use.isIgnored()) {
            return single.isEmpty() ? Optional.empty() : Optional.of(Choice.ignored(key.key(), single, use.reason()));
        }
        if (!key.sets().isEmpty()) {
            return Optional.empty();
        }
        List<Candidate> weakestFirst = new ArrayList<>(boosted(key));
        weakestFirst.addAll(fromGroups(key));
        weakestFirst.addAll(single);
        List<Candidate> used = weakestFirst.stream()
                .map(candidate -> candidate.under(use.condition()))
                .toList();
        return used.isEmpty() ? Optional.empty() : Optional.of(Choice.among(key.key(), used));
    }

    /** Whether any line can decide the key: its own, one of a key that sets it, or one that raises its stock value. */
    private boolean isTouched(TuningKey key) {
        if (own.containsKey(key.key())) {
            return true;
        }
        for (TuningKey group : vocabulary.groupsOf(key.key())) {
            if (own.containsKey(group.key())) {
                return true;
            }
        }
        for (BoardStock column : stock.perBoard(key.key())) {
            if (column.stock() instanceof Stock.WithBoost boost && own.containsKey(boost.boostKey())) {
                return true;
            }
        }
        return false;
    }

    private List<Candidate> own(TuningKey key) {
        return own.getOrDefault(key.key(), List.of());
    }

    private List<Candidate> fromGroups(TuningKey key) {
        return vocabulary.groupsOf(key.key()).stream()
                .flatMap(group -> usable(group).stream())
                .toList();
    }

    /** What a key's lines give, each under the condition that the board reads the key at all. */
    private List<Candidate> usable(TuningKey key) {
        KeyUse use = KeyUse.of(key, facts, stock);
        return use.isIgnored()
                ? List.of()
                : own(key).stream()
                        .map(candidate -> candidate.under(use.condition()))
                        .toList();
    }

    private List<Candidate> boosted(TuningKey key) {
        if (facts.board().isEmpty()) {
            return List.of();
        }
        List<Stock> stocks = stock.of(key.key(), facts.board().get().id(), facts.revisionNumber());
        Condition column = stocks.size() == 1 ? Condition.HOLDS : Condition.dependsOn("the board's revision");
        List<Candidate> found = new ArrayList<>();
        for (Stock each : stocks) {
            if (each instanceof Stock.WithBoost boost) {
                vocabulary.find(boost.boostKey()).map(this::usable).orElse(List.of()).stream()
                        .map(candidate -> candidate.under(column).withValue(value(boost, candidate)))
                        .forEach(found::add);
            }
        }
        return found.isEmpty() || isStock(Choice.among(key.key(), found), stocks) ? List.of() : found;
    }

    private static boolean isStock(Effective effective, List<Stock> stocks) {
        return Stream.concat(Stream.of(effective.chosen()), effective.otherwise().stream())
                .allMatch(candidate -> stocks.stream()
                        .anyMatch(each -> each instanceof Stock.WithBoost boost
                                && candidate.value().equals(text(boost.number()))));
    }

    private static String value(Stock.WithBoost boost, Candidate candidate) {
        OptionalLong number = TuningNumber.parse(candidate.value());
        boolean boosts = number.equals(OptionalLong.of(boost.boostValue()));
        return text(boosts ? boost.boosted() : boost.number());
    }

    private static String text(long number) {
        return Long.toString(number);
    }
}
