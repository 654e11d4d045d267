package bootmend.cli;

import bootmend.check.Finding;
import bootmend.check.Purpose;
import bootmend.config.VisibleText;
import bootmend.job.CheckView;
import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.Template;
import java.io.IOException;
import java.io.InputStream;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A check as one self-contained page to print and pack with the card; every text is escaped by the template engine. */
final class CheckHtml implements CheckFile {

    private static final String TEMPLATE = "packing-slip.html";

    /** Parts the template into what comes before the cards, one card, and what comes after. */
    private static final String CUT = "<!-- cut -->\n";

    private final DateTimeFormatter when;
    private final Writer out;
    private final List<Template> parts;

    /** @param zone the time zone that dates are given in */
    CheckHtml(Writer out, Purpose purpose, ZoneId zone) throws IOException {
        this.out = out;
        this.when = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm 'UTC'xxx", Locale.ROOT).withZone(zone);
        Mustache.Compiler compiler = Mustache.compiler().escapeHTML(true).emptyStringIsFalse(true);
        this.parts = List.of(text().split(CUT)).stream().map(compiler::compile).toList();
        parts.get(0).execute(Map.of("purpose", purpose.word()), out);
    }

    @Override
    public void add(CheckedCard checked) {
        parts.get(1).execute(card(checked), out);
    }

    @Override
    public void close() throws IOException {
        parts.get(2).execute(Map.of(), out);
        out.flush();
    }

    private static String text() throws IOException {
        try (InputStream in = CheckHtml.class.getResourceAsStream(TEMPLATE)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private Map<String, Object> card(CheckedCard checked) {
        Map<String, Object> card = new HashMap<>();
        card.put("card", visible(checked.name()));
        card.put("view", checked.view().map(this::view).orElse(null));
        card.put("error", checked.error().map(error -> Map.of("what", visible(error.getMessage()),
                "remedy", visible(error.remedy()))).orElse(null));
        return card;
    }

    private Map<String, Object> view(CheckView view) {
        Map<String, Object> shown = new HashMap<>();
        shown.put("label", visible(view.card().partition().label()));
        shown.put("serial", view.card().partition().serial());
        shown.put("volume", view.card().partition().fatType() + ", "
                + Screen.size(view.card().partition().bytes()));
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
