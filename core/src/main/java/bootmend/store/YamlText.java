package bootmend.store;

import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLGenerator;
import com.fasterxml.jackson.dataformat.yaml.util.StringQuotingChecker;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Writes the YAML that {@link YamlFile} reads, as a person would lay it out. */
public final class YamlText {

    /** What is to stand in the text. */
    @FunctionalInterface
    public interface Content {
        /** Writes it; may be called twice. */
        void writeTo(YAMLGenerator yaml) throws IOException;
    }

    private YamlText() {}

    /**
     * The text in UTF-8.
     *
     * @param comment stands above it, one or more lines
     */
    public static byte[] of(String comment, Content content) {
        String text = text(content, true);
        if (OddBreaks.in(text)) {
            text = text(content, false);
        }
        StringWriter whole = new StringWriter();
        comment.lines().forEach(line -> whole.append("# ").append(line).append('\n'));
        whole.append(text);
        return whole.toString().getBytes(StandardCharsets.UTF_8);
    }

    /** @param blocks whether texts of several lines stand line under line, rather than escaped in quotes */
    private static String text(Content content, boolean blocks) {
        StringWriter text = new StringWriter();
        YAMLFactory factory = YAMLFactory.builder()
                .disable(YAMLGenerator.Feature.WRITE_DOC_START_MARKER)
                .disable(YAMLGenerator.Feature.SPLIT_LINES)
                .enable(YAMLGenerator.Feature.MINIMIZE_QUOTES)
                .configure(YAMLGenerator.Feature.LITERAL_BLOCK_STYLE, blocks)
                .stringQuotingChecker(new OddBreaks())
                .build();
        try (YAMLGenerator yaml = factory.createGenerator(text)) {
            yaml.writeStartObject();
            content.writeTo(yaml);
            yaml.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /**
     * Has texts with a break that is not a line feed quoted, where it is escaped; plain, a reader would take it for one.
     *
     * <p>Source: YAML 1.1, 5.4 "Line Break Characters": next line, line separator and paragraph separator break lines.
     */
    private static final class OddBreaks extends StringQuotingChecker.Default {

        private static final long serialVersionUID = 1L;
        private static final String BREAKS = "\u0085\u2028\u2029";

        static boolean in(String text) {
            return text.chars().anyMatch(character -> BREAKS.indexOf(character) >= 0);
        }

        @Override
        public boolean needToQuoteValue(String value) {
            return in(value) || super.needToQuoteValue(value);
        }
    }
}
