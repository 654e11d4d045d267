package bootmend.operation;

import bootmend.CardException;
import bootmend.boot.Depth;
import bootmend.card.CardListing;
import bootmend.card.OpenCard;
import bootmend.check.CardContents;
import bootmend.check.Checker;
import bootmend.check.ConfigText;
import bootmend.check.ExaminedCard;
import bootmend.config.ConfigDocument;
import bootmend.finding.Finding;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.view.CardExaminer;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

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

    /**
     * All of them, the heaviest first, with those of a card on which something waits that its tuning makes dangerous.
     *
     * @param files the config files after the change, by path
     */
    List<Finding> of(OpenCard card, Map<String, ConfigDocument> files) throws CardException, IOException {
        ExaminedCard before =
                new CardExaminer(work.workplace()).read(card, CardListing.of(card.volume()), facts, Depth.NAMES);
        List<ConfigText> config = new ArrayList<>();
        for (ConfigText text : before.config()) {
            config.add(new ConfigText(text.path(), files.getOrDefault(text.path(), text.document()), text.warnings()));
        }
        ExaminedCard after = new ExaminedCard(
                before.files(),
                config,
                before.configProblem(),
                before.space(),
                before.health(),
                before.interrupted(),
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

    private List<Finding> findings(Checker checker, ExaminedCard read) {
        return checker.check(new CardContents(tables).of(read, facts)).stream()
                .filter(finding -> !finding.id().equals(TUNED))
                .toList();
    }
}
