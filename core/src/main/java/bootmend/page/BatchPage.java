package bootmend.page;

import bootmend.StepWords;
import bootmend.config.VisibleText;
import bootmend.operation.Made;
import bootmend.view.ConfigView;
import java.io.Closeable;
import java.io.IOException;
import java.io.Writer;
import java.util.HashMap;
import java.util.Map;

/**
 * A batch's report as one self-contained HTML page, a row a card and the counts at the end. It is UTF-8 and says so,
 * loads nothing, and runs nothing.
 */
public final class BatchPage implements Closeable {

    private final PageTemplate page;
    private final StepWords words;
    private final BatchCounts counts = new BatchCounts();

    private BatchPage(PageTemplate page, StepWords words) {
        this.page = page;
        this.words = words;
    }

    /**
     * Begins a page.
     *
     * @param out where it goes; left open
     * @param command what was done, such as {@code reset}
     * @param words what says the steps
     */
    public static BatchPage open(Writer out, String command, StepWords words) throws IOException {
        PageTemplate page = new PageTemplate("batch-report.html", out);
        page.begin(Map.of("command", command));
        return new BatchPage(page, words);
    }

    public void add(CardOutcome card) throws IOException {
        counts.add(card.state());
        Map<String, Object> row = new HashMap<>();
        row.put("card", visible(card.card()));
        row.put("state", card.state().words());
        row.put("bad", card.wantsAttention());
        row.put("was", card.was().map(was -> visible(was.words())).orElse(""));
        row.put(
                "sha256",
                card.was()
                        .flatMap(CardOutcome.Was::config)
                        .map(ConfigView::sha256)
                        .orElse(""));
        row.put("changed", card.changedWords().stream().map(BatchPage::visible).toList());
        row.put("verified", card.verified() ? "verified" : "");
        row.put(
                "findings",
                card.findings().stream()
                        .map(finding -> visible(card.words(finding)))
                        .toList());
        row.put("undo", card.made().map(Made::record).map(BatchPage::visible).orElse(""));
        row.put(
                "error",
                card.error()
                        .map(error -> visible(error.getMessage()) + ". " + visible(words.remedy(error)))
                        .orElse(""));
        row.put("seconds", card.seconds());
        page.card(row);
    }

    /** Writes the counts, ends the page and flushes it. */
    @Override
    public void close() throws IOException {
        page.end(Map.of("totals", counts.words(), "cards", Amount.count(counts.cards(), "card")));
    }

    private static String visible(String text) {
        return VisibleText.of(text);
    }
}
