package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.boot.Depth;
import bootmend.card.CardListing;
import bootmend.card.OpenCard;
import bootmend.check.CardContents;
import bootmend.check.CardRead;
import bootmend.check.Checker;
import bootmend.check.ConfigText;
import bootmend.config.ConfigDocument;
import bootmend.finding.Finding;
import bootmend.finding.Severity;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.view.CardReads;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What a check, for any purpose, finds in new config files and does not find in those that are on a card.
 *
 * <p>That settings tune the card is no finding here: it is what they are put there for.
 */
final class NewFindings {

    private static final String TUNED = "tuning-line-active";

    private final Work work;
    private final TuningTables tables;
    private final BoardFacts facts;

    /** @param facts what is known about the board; where it names none, every board that the card can be meant for counts */
    NewFindings(Work work, BoardFacts facts) {
        this.work = work;
        this.tables = work.workplace().tables();
        this.facts = facts;
    }

    static NewFindings on(Work work, Board board) {
        return new NewFindings(work, BoardFacts.of(board));
    }

    /**
     * Refuses where there are blockers among them, unless that risk was taken.
     *
     * @param files the config files after the change, by path
     * @param done what would be done all the same, such as {@code staged}
     */
    void refuseBlockers(OpenCard card, Map<String, ConfigDocument> files, String done)
            throws CardException, IOException {
        if (!work.order().accepts(NextStep.Allow.BLOCKERS)) {
            refuse(of(card, files), done);
        }
    }

    /**
     * The same, and otherwise all of them, the heaviest first.
     *
     * @param files the config files after the change, by path
     * @param done what would be done all the same, such as {@code set}
     */
    List<Finding> withoutBlockers(OpenCard card, Map<String, ConfigDocument> files, String done)
            throws CardException, IOException {
        List<Finding> found = of(card, files);
        if (!work.order().accepts(NextStep.Allow.BLOCKERS)) {
            refuse(found, done);
        }
        return found;
    }

    /** With those of a card on which something waits that its tuning makes dangerous. */
    private List<Finding> of(OpenCard card, Map<String, ConfigDocument> files) throws CardException, IOException {
        CardRead before = new CardReads(work.workplace()).read(card, CardListing.of(card.volume()), facts, Depth.NAMES);
        List<ConfigText> config = new ArrayList<>();
        for (ConfigText text : before.config()) {
            config.add(new ConfigText(text.path(), files.getOrDefault(text.path(), text.document()), text.doubts()));
        }
        CardRead after = new CardRead(
                before.files(),
                config,
                before.configProblem(),
                before.space(),
                before.health(),
                before.cutShort(),
                before.boot());
        Checker checker = new Checker(tables);
        Set<String> known = new HashSet<>();
        findings(checker, before).forEach(finding -> known.add(seen(finding)));
        return findings(checker, after).stream()
                .filter(finding -> !known.contains(seen(finding)))
                .toList();
    }

    /** The same finding before and after, whatever line it stands on by then; one that got heavier is another. */
    private static String seen(Finding finding) {
        return finding.severity() + " " + finding.rule().id() + " " + finding.what();
    }

    private void refuse(List<Finding> found, String done) throws CardException {
        Optional<Finding> blocker = found.stream()
                .filter(finding -> finding.severity() == Severity.BLOCKER)
                .findFirst();
        if (blocker.isPresent()) {
            Finding first = blocker.get();
            boolean otherBoards = facts.board().isEmpty() && !first.boards().isEmpty();
            throw CardException.refused(
                    "a check finds a blocker in it"
                            + (otherBoards ? " on " + String.join(", ", first.boards()) : "") + ": " + first.what()
                            + " "
                            + first.rule().meaning(),
                    first.rule().remedy() + " Where it is " + done
                            + " all the same, what the finding warns of may happen, and some "
                            + "of it cannot be undone.",
                    Stream.of(
                                    first.rule().steps().stream(),
                                    Stream.of(NextStep.Plain.GIVE_BOARD).filter(step -> otherBoards),
                                    Stream.of(NextStep.Allow.BLOCKERS))
                            .flatMap(steps -> steps)
                            .toArray(NextStep[]::new));
        }
    }

    private List<Finding> findings(Checker checker, CardRead read) {
        return checker.check(new CardContents(tables).of(read, facts)).stream()
                .filter(finding -> !finding.id().equals(TUNED))
                .toList();
    }
}
