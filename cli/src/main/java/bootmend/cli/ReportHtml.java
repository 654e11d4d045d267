package bootmend.cli;

import bootmend.config.VisibleText;
import bootmend.page.Amount;
import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.Template;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A batch's report as one self-contained page; every text is escaped by the template engine. */
final class ReportHtml implements BatchReport {

    private static final String TEMPLATE = "batch-report.html";
    /** Parts the template into what comes before the cards, one card, and what comes after. */
    private static final String CUT = "<!-- cut -->\n";

    private final Writer out;
    private final List<Template> parts;

    ReportHtml(Writer out, String command) throws IOException {
        this.out = out;
        Mustache.Compiler compiler = Mustache.compiler().escapeHTML(true).emptyStringIsFalse(true).nullValue("");
        this.parts = List.of(text().split(CUT)).stream().map(compiler::compile).toList();
        parts.get(0).execute(Map.of("command", command), out);
    }

    @Override
    public void add(CardReport card) throws IOException {
        Map<String, Object> row = new HashMap<>();
        row.put("card", visible(card.card()));
        row.put("state", card.state().words());
        row.put("bad", card.exitCode() != ExitCode.DONE);
        row.put("was", card.was() == null ? "" : visible(card.was().words()));
        row.put("sha256", card.was() == null ? null : card.was().configSha256());
        row.put("changed", card.changed().stream().map(line -> visible(ReportCsv.line(line))).toList());
        row.put("verified", card.verified() ? "verified" : "");
        row.put("findings", card.findings().stream().map(finding -> visible(ReportCsv.finding(finding))).toList());
        row.put("undo", card.undoRecord() == null ? "" : visible(card.undoRecord()));
        row.put("error", card.error() == null ? ""
                : visible(card.error().what()) + ". " + visible(card.error().remedy()));
        row.put("seconds", card.seconds());
        parts.get(1).execute(row, out);
    }

    @Override
    public void end(BatchTotals totals) throws IOException {
        parts.get(2).execute(Map.of("totals", totals.words(), "cards", Amount.count(totals.cards(), "card")), out);
        out.flush();
    }

    @Override
    public void close() throws IOException {
        out.close();
    }

    private static String visible(String text) {
        return VisibleText.of(text);
    }

    private static String text() {
        try (InputStream in = ReportHtml.class.getResourceAsStream(TEMPLATE)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
