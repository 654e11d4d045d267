package bootmend.page;

import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.Template;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * A page that is written card by card, so that its length costs no memory: what comes before the cards, each card, and
 * what comes after. Every text is escaped by the template engine; control characters are for the caller to make visible.
 */
final class PageTemplate {

    /** Stands between the three parts. */
    private static final String CUT = "<!-- cut -->\n";

    private final Writer out;
    private final Template before;
    private final Template card;
    private final Template after;

    /** @param file a resource beside this class */
    PageTemplate(String file, Writer out) {
        this.out = out;
        Mustache.Compiler compiler = Mustache.compiler().escapeHTML(true).emptyStringIsFalse(true);
        List<Template> parts =
                Stream.of(text(file).split(CUT)).map(compiler::compile).toList();
        this.before = parts.get(0);
        this.card = parts.get(1);
        this.after = parts.get(2);
    }

    void begin(Map<String, Object> values) throws IOException {
        write(before, values);
    }

    void card(Map<String, Object> values) throws IOException {
        write(card, values);
    }

    void end(Map<String, Object> values) throws IOException {
        write(after, values);
        out.flush();
    }

    /** The engine would hide what keeps the file from being written in an error of its own. */
    private void write(Template part, Map<String, Object> values) throws IOException {
        out.write(part.execute(values));
    }

    private static String text(String file) {
        try (InputStream in = PageTemplate.class.getResourceAsStream(file)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
