package bootmend.gui.model;

import bootmend.CardException;
import bootmend.StepWords;
import bootmend.batch.CardResult;
import bootmend.finding.Purpose;
import bootmend.page.BatchPage;
import bootmend.page.CardOutcome;
import bootmend.page.PackingSlip;
import bootmend.view.CheckView;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;

/** Writes what a batch found to files that a user named. */
final class BatchFiles {

    private BatchFiles() {}

    /** A sheet a card, to print and pack. */
    static Path slips(Path file, Purpose purpose, List<CardResult<CheckView>> checked, StepWords words)
            throws CardException {
        return new PageFile(file).save(checked.stream().map(CardResult::card).toList(), out -> {
            try (PackingSlip slip = PackingSlip.open(out, purpose, ZoneId.systemDefault(), words)) {
                for (CardResult<CheckView> result : checked) {
                    String card = result.card().toString();
                    if (result.view().isPresent()) {
                        slip.add(card, result.view().get());
                    } else if (result.error().isPresent()) {
                        slip.add(card, result.error().get());
                    }
                }
            }
        });
    }

    /**
     * A row a card.
     *
     * @param cards the cards of the batch, to which no page is saved
     * @param what was done, in a few words
     */
    static Path report(Path file, List<Path> cards, String what, List<CardOutcome> outcomes, StepWords words)
            throws CardException {
        return new PageFile(file).save(cards, out -> {
            try (BatchPage page = BatchPage.open(out, what, words)) {
                for (CardOutcome outcome : outcomes) {
                    page.add(outcome);
                }
            }
        });
    }
}
