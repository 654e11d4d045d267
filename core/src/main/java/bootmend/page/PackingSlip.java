package bootmend.page;

import bootmend.CardException;
import bootmend.StepWords;
import bootmend.config.VisibleText;
import bootmend.finding.Purpose;
import bootmend.view.CheckView;
import java.io.Closeable;
import java.io.IOException;
import java.io.Writer;
import java.time.ZoneId;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Checks of one card or many as one self-contained HTML page to print and pack with the cards, a sheet a card. It is
 * UTF-8 and says so, loads nothing, and runs nothing.
 */
public final class PackingSlip implements Closeable {

    private final PageTemplate page;
    private final ZoneId zone;
    private final StepWords words;

    private PackingSlip(PageTemplate page, ZoneId zone, StepWords words) {
        this.page = page;
        this.zone = zone;
        this.words = words;
    }

    /**
     * Begins a page.
     *
     * @param out where it goes; left open
     * @param zone the time zone that dates are given in
     * @param words what says the steps
     */
    public static PackingSlip open(Writer out, Purpose purpose, ZoneId zone, StepWords words) throws IOException {
        PageTemplate page = new PageTemplate("packing-slip.html", out);
        page.begin(Map.of("purpose", purpose.word()));
        return new PackingSlip(page, zone, words);
    }

    /** @param card as the user named it */
    public void add(String card, CheckView view) throws IOException {
        add(card, Optional.of(SlipContent.of(card, view, zone, words)), Optional.empty());
    }

    /**
     * A card that could not be checked.
     *
     * @param card as the user named it
     */
    public void add(String card, CardException error) throws IOException {
        add(
                card,
                Optional.empty(),
                Optional.of(Map.of("what", visible(error.getMessage()), "remedy", visible(words.remedy(error)))));
    }

    /** Ends the page and flushes it. */
    @Override
    public void close() throws IOException {
        page.end(Map.of());
    }

    private void add(String card, Optional<SlipContent> view, Optional<Map<String, Object>> error) throws IOException {
        Map<String, Object> values = new HashMap<>();
        values.put("card", visible(card));
        values.put("view", view.orElse(null));
        values.put("error", error.orElse(null));
        values.put("blanks", SlipContent.BLANKS);
        values.put("nothing", SlipContent.NOTHING);
        values.put("caution", SlipContent.CAUTION);
        page.card(values);
    }

    private static String visible(String text) {
        return VisibleText.of(text);
    }
}
