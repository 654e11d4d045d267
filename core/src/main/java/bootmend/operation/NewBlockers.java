package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.boot.Depth;
import bootmend.card.CardListing;
import bootmend.card.OpenCard;
import bootmend.check.CardContent;
import bootmend.check.CardContents;
import bootmend.check.Checker;
import bootmend.check.ConfigText;
import bootmend.check.ExaminedCard;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigName;
import bootmend.finding.Finding;
import bootmend.finding.Purpose;
import bootmend.finding.Severity;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.view.CardExaminer;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Finds the blockers that new config files would bring to a card, for any purpose. */
final class NewBlockers {

    /** That a profile tunes the card is what it is for. */
    private static final String TUNED = "tuning-line-active";

    private final Work work;
    private final TuningTables tables;
    private final Optional<Board> board;
    private final Checker checker;

    /** @param board the board that the card is for; empty where that is not said */
    NewBlockers(Work work, Optional<Board> board) {
        this.work = work;
        this.tables = work.workplace().tables();
        this.board = board;
        this.checker = new Checker(tables);
    }

    /**
     * Refuses where there are any, unless that risk was taken. Where the board is not said, it is refused only if none of
     * those that the card can be meant for is without one.
     *
     * @param files the config files after the change, by path
     * @param done what would be done all the same, such as {@code staged}
     * @return what a user should say yes to, because some of the boards that the card can be meant for have blockers
     */
    List<String> refuse(OpenCard card, Map<String, ConfigDocument> files, String done)
            throws CardException, IOException {
        if (work.order().accepts(NextStep.Allow.BLOCKERS)) {
            return List.of();
        }
        BoardFacts facts = board.map(BoardFacts::of).orElse(BoardFacts.none());
        ExaminedCard before =
                new CardExaminer(work.workplace()).read(card, CardListing.of(card.volume()), facts, Depth.NAMES);
        if (of(before, files, facts).isEmpty()) {
            return List.of();
        }
        Map<String, Finding> byBoard = new LinkedHashMap<>();
        List<Board> boards = boards(new CardContents(tables).of(before, facts).boardIds());
        for (Board each : boards) {
            of(before, files, BoardFacts.of(each)).stream()
                    .findFirst()
                    .ifPresent(first -> byBoard.put(each.id(), first));
        }
        if (byBoard.isEmpty()) {
            return List.of();
        }
        Finding first = byBoard.values().iterator().next();
        if (byBoard.size() == boards.size()) {
            throw refused(first, done);
        }
        return List.of("This card can be meant for several boards, and on " + String.join(", ", byBoard.keySet())
                + " a check finds a blocker in it: " + first.what());
    }

    /** The board that was said, or those that the card can be meant for; each where nothing tells one. */
    private List<Board> boards(List<String> meant) {
        return board.map(List::of)
                .orElseGet(() -> tables.boards().all().stream()
                        .filter(each -> meant.isEmpty() || meant.contains(each.id()))
                        .toList());
    }

    /**
     * Blockers that are not there without the change, and those of a card on which something waits that tuning makes
     * dangerous.
     *
     * @param files the config files after the change, by path
     */
    private List<Finding> of(ExaminedCard before, Map<String, ConfigDocument> files, BoardFacts facts) {
        List<ConfigText> config = new ArrayList<>();
        for (ConfigText text : before.config()) {
            config.add(new ConfigText(text.path(), files.getOrDefault(text.path(), text.document()), text.warnings()));
        }
        if (config.isEmpty() && files.containsKey(ConfigName.NAME)) {
            config.add(new ConfigText(ConfigName.NAME, files.get(ConfigName.NAME), List.of()));
        }
        ExaminedCard after = new ExaminedCard(
                before.files(),
                config,
                config.isEmpty() ? before.configProblem() : Optional.empty(),
                before.space(),
                before.health(),
                before.interrupted(),
                before.boot());
        Set<String> known = new HashSet<>();
        blockers(before, facts).forEach(finding -> known.add(seen(finding)));
        return blockers(after, facts).stream()
                .filter(finding -> !known.contains(seen(finding)))
                .toList();
    }

    /** The same finding before and after, whatever line it stands on by then. */
    private static String seen(Finding finding) {
        return finding.rule() + " " + finding.what();
    }

    private static CardException refused(Finding first, String done) {
        return CardException.refused(
                "a check finds a blocker in it: " + first.what() + " "
                        + first.rule().meaning().replaceFirst("\\.$", ""),
                first.rule().remedy() + " Where it is " + done
                        + " all the same, what the finding warns of may happen, and some "
                        + "of it cannot be undone.",
                Stream.concat(first.rule().steps().stream(), Stream.of(NextStep.Allow.BLOCKERS))
                        .toArray(NextStep[]::new));
    }

    private List<Finding> blockers(ExaminedCard read, BoardFacts facts) {
        Map<String, Finding> blockers = new LinkedHashMap<>();
        CardContent content = new CardContents(tables).of(read, facts);
        for (Purpose purpose : Purpose.values()) {
            for (Finding finding : checker.check(content, purpose)) {
                if (finding.severity() == Severity.BLOCKER && !finding.id().equals(TUNED)) {
                    blockers.putIfAbsent(finding.id() + finding.where() + finding.what(), finding);
                }
            }
        }
        return List.copyOf(blockers.values());
    }
}
