package bootmend.store;

import bootmend.CardException;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * A YAML mapping of words to words, or to one more level of such mappings, that knows each word's line.
 *
 * <p>Every scalar is text here, so that {@code 0x50000}, {@code yes} and {@code no boot} arrive as they were written.
 */
public final class YamlMapping {

    /** What stands behind a key. */
    sealed interface Node {

        int line();

        /** A scalar as it was written; empty for none. */
        record Text(String text, int line) implements Node {}

        /** A mapping. */
        record Nested(YamlMapping mapping, int line) implements Node {}
    }

    private final String file;
    private final Map<String, Node> nodes;

    YamlMapping(String file, Map<String, Node> nodes) {
        this.file = file;
        this.nodes = nodes;
    }

    /** @throws CardException if there is a key that is not one of these */
    public void refuseKeysOtherThan(Set<String> known) throws CardException {
        for (Map.Entry<String, Node> entry : nodes.entrySet()) {
            if (!known.contains(entry.getKey())) {
                throw error(
                        entry.getValue().line(),
                        "there is no " + entry.getKey() + " here; the words are "
                                + String.join(", ", known.stream().sorted().toList()));
            }
        }
    }

    public Set<String> keys() {
        return nodes.keySet();
    }

    /**
     * What stands behind a key, as {@code reader} makes it of the text; empty where the key or its text is missing.
     *
     * @param reader throws {@link IllegalArgumentException} with a sentence where the text is wrong
     * @throws CardException that names file and line, if it did
     */
    public <T> Optional<T> find(String key, Function<String, T> reader) throws CardException {
        Node node = nodes.get(key);
        if (node == null) {
            return Optional.empty();
        }
        if (!(node instanceof Node.Text text)) {
            throw error(node.line(), key + " should be one value, not a list of its own");
        }
        if (text.text().isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(reader.apply(text.text()));
        } catch (IllegalArgumentException e) {
            throw error(node.line(), key + ": " + e.getMessage());
        }
    }

    /** The same, where it must not be missing. */
    public <T> T get(String key, Function<String, T> reader) throws CardException {
        return find(key, reader).orElseThrow(() -> error(1, key + " is missing"));
    }

    /** The mapping behind a key; an empty one where the key is missing. */
    public YamlMapping mapping(String key) throws CardException {
        Node node = nodes.get(key);
        if (node == null || node instanceof Node.Text text && text.text().isEmpty()) {
            return new YamlMapping(file, Map.of());
        }
        if (!(node instanceof Node.Nested nested)) {
            throw error(node.line(), key + " should be lines of their own below it, each with two blanks in front");
        }
        return nested.mapping();
    }

    /** An error at a key, for what only shows when several values are seen together. */
    public CardException errorAt(String key, String problem) {
        Node node = nodes.get(key);
        return error(node == null ? 1 : node.line(), problem);
    }

    private CardException error(int line, String problem) {
        return YamlFile.error(file, line, problem);
    }
}
