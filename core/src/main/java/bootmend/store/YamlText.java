package bootmend.store;

import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Writes the YAML that {@link YamlFile} reads, as a person would lay it out. */
public final class YamlText {

    /** What is to stand in the text. */
    @FunctionalInterface
    public interface Content {
        void writeTo(YAMLGenerator yaml) throws IOException;
    }

    private YamlText() {
    }

    /**
     * The text in UTF-8.
     *
     * @param comment stands above it, one or more lines
     */
    public static byte[] of(String comment, Content content) {
        StringWriter text = new StringWriter();
        comment.lines().forEach(line -> text.append("# ").append(line).append('\n'));
        YAMLFactory factory = YAMLFactory.builder()
                .disable(YAMLGenerator.Feature.WRITE_DOC_START_MARKER)
                .disable(YAMLGenerator.Feature.SPLIT_LINES)
                .enable(YAMLGenerator.Feature.MINIMIZE_QUOTES)
                .enable(YAMLGenerator.Feature.LITERAL_BLOCK_STYLE)
                .build();
        try (YAMLGenerator yaml = factory.createGenerator(text)) {
            yaml.writeStartObject();
            content.writeTo(yaml);
            yaml.writeEndObject();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }
}
