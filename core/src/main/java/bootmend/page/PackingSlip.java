package bootmend.page;

import bootmend.CardException;
import bootmend.check.Finding;
import bootmend.check.Purpose;
import bootmend.config.VisibleText;
import bootmend.job.CheckView;
import java.io.Closeable;
import java.io.IOException;
import java.io.Writer;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Checks of one card or many as one self-contained HTML page to print and pack with the cards, a sheet a card. It is
 * UTF-8 and says so, loads nothing, and runs nothing.
 */
public final class PackingSlip implements Closeable {

    private final PageTemplate page;
    private final DateTimeFormatter when;

    private PackingSlip(PageTemplate page, ZoneId zone) {
        this.page = page;
        this.when = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm 'UTC'xxx", Locale.ROOT).withZone(zone);
    }

    /**
     * Begins a page.
     *
     * @param out where it goes; left open
     * @param zone the time zone that dates are given in
     */
    public static PackingSlip open(Writer out, Purpose purpose, ZoneId zone) throws IOException {
        PageTemplate page = new PageTemplate("packing-slip.html", out);
        page.begin(Map.of("purpose", purpose.word()));
        return new PackingSlip(page, zone);
    }

    /** @param card as the user named it */
    public void add(String card, CheckView view) throws IOException {
        add(card, Optional.of(view(view)), Optional.empty());
    }

    /**
     * A card that could not be checked.
     *
     * @param card as the user named it
     */
    public void add(String card, CardException error) throws IOException {
        add(card, Optional.empty(),
                Optional.of(Map.of("what", visible(error.getMessage()), "remedy", visible(error.remedy()))));
    }

    /** Ends the page and flushes it. */
    @Override
    public void close() throws IOException {
        page.end(Map.of());
    }

    private void add(String card, Optional<Map<String, Object>> view, Optional<Map<String, Object>> error)
            throws IOException {
        Map<String, Object> values = new HashMap<>();
        values.put("card", visible(card));
        values.put("view", view.orElse(null));
        values.put("error", error.orElse(null));
        page.card(values);
    }

    private Map<String, Object> view(CheckView view) {
        Map<String, Object> shown = new HashMap<>();
        shown.put("label", visible(view.card().partition().label()));
        shown.put("serial", view.card().partition().serial());
        shown.put("volume", view.card().partition().fatType() + ", " + Amount.size(view.card().partition().bytes()));
        shown.put("config", view.card().config()
                .map(config -> Map.of("path", config.path(), "bytes", config.bytes(), "sha256", config.sha256()))
                .orElse(null));
        shown.put("purpose", CheckWords.purpose(view.purpose()));
        shown.put("boards", CheckWords.boards(view));
        shown.put("when", when.format(view.when()));
        shown.put("ready", !view.hasBlocker());
        shown.put("verdict", CheckWords.verdict(view));
        shown.put("groups", FindingGroup.of(view.findings()).stream()
                .map(group -> group(group, view.boards())).toList());
        return shown;
    }

    private static Map<String, Object> group(FindingGroup group, List<String> all) {
        return Map.of("severity", group.severity().word(), "rule", group.rule(), "meaning", group.meaning(),
                "remedy", group.remedy(), "source", group.source(),
                "items", group.findings().stream().map(finding -> item(finding, all)).toList());
    }

    private static Map<String, Object> item(Finding finding, List<String> all) {
        return Map.of("where", visible(finding.where().words()), "what", visible(finding.what()),
                "boards", CheckWords.boards(finding, all).strip());
    }

    private static String visible(String text) {
        return VisibleText.of(text);
    }
}
