package bootmend.store;

import bootmend.CardException;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLParser;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.yaml.snakeyaml.error.YAMLException;

/** Reads a small YAML file that somebody may have edited by hand; every error names the file and the line. */
public final class YamlFile {

    /** Far more than such a file ever has, in bytes. */
    public static final int MAX_BYTES = 1 << 16;

    private static final int MAX_DEPTH = 3;

    private final String file;
    private final YAMLParser parser;

    private YamlFile(String file, YAMLParser parser) {
        this.file = file;
        this.parser = parser;
    }

    /** @throws CardException if the file cannot be read or is no such mapping */
    public static YamlMapping read(Path file) throws CardException {
        if (!Files.isRegularFile(file)) {
            throw error(file.toString(), 1, "this is no file");
        }
        try (InputStream in = Files.newInputStream(file)) {
            return read(file.toString(), in.readNBytes(MAX_BYTES + 1));
        } catch (IOException e) {
            throw CardException.unreadable(
                    file + " cannot be read (" + e.getMessage() + ")", "Check its rights and the disk it is on.", e);
        }
    }

    /** @param file the file's name, for messages */
    static YamlMapping read(String file, byte[] bytes) throws CardException {
        if (bytes.length > MAX_BYTES) {
            throw error(file, 1, "the file has more than " + MAX_BYTES + " bytes");
        }
        String text = new String(bytes, StandardCharsets.UTF_8);
        try (YAMLParser parser = new YAMLFactory().createParser(text)) {
            return new YamlFile(file, parser).document();
        } catch (JsonProcessingException e) {
            int line = e.getLocation() == null ? 1 : Math.max(1, e.getLocation().getLineNr());
            throw error(file, line, "this is no YAML (" + firstLine(e.getOriginalMessage()) + ")");
        } catch (IOException | YAMLException e) {
            throw error(file, 1, "this is no YAML (" + firstLine(String.valueOf(e.getMessage())) + ")");
        }
    }

    static CardException error(String file, int line, String problem) {
        return CardException.unreadable(
                file + ", line " + line + ": " + problem, "Correct that line, or move the file to another folder.");
    }

    private YamlMapping document() throws CardException, IOException {
        JsonToken first = parser.nextToken();
        if (first != JsonToken.START_OBJECT) {
            throw error(first == null ? "the file is empty" : "the file should begin with lines like \"schema: 1\"");
        }
        YamlMapping mapping = mapping(1);
        if (parser.nextToken() != null) {
            throw error("there is a second document in this file");
        }
        return mapping;
    }

    private YamlMapping mapping(int depth) throws CardException, IOException {
        Map<String, YamlMapping.Node> nodes = new LinkedHashMap<>();
        while (parser.nextToken() == JsonToken.FIELD_NAME) {
            String key = parser.currentName();
            if (nodes.containsKey(key)) {
                throw error(key + " stands here twice");
            }
            int line = line();
            nodes.put(key, node(parser.nextToken(), line, depth));
        }
        if (parser.currentToken() != JsonToken.END_OBJECT) {
            throw error("the file ends too early");
        }
        return new YamlMapping(file, nodes);
    }

    private YamlMapping.Node node(JsonToken token, int line, int depth) throws CardException, IOException {
        if (token == JsonToken.START_OBJECT && depth < MAX_DEPTH) {
            return new YamlMapping.Node.Nested(mapping(depth + 1), line);
        }
        if (token == JsonToken.VALUE_NULL) {
            return new YamlMapping.Node.Text("", line);
        }
        if (token == null
                || !token.isScalarValue()
                || token == JsonToken.VALUE_EMBEDDED_OBJECT
                || parser.isCurrentAlias()) {
            throw error(file, line, "a value should be plain text or a number");
        }
        return new YamlMapping.Node.Text(parser.getText(), line);
    }

    private CardException error(String problem) {
        return error(file, line(), problem);
    }

    private int line() {
        return Math.max(1, parser.currentTokenLocation().getLineNr());
    }

    private static String firstLine(String message) {
        return message.lines().findFirst().orElse("").strip();
    }
}
