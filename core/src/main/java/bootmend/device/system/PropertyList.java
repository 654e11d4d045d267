package bootmend.device.system;

import java.io.IOException;
import java.io.StringReader;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/**
 * The keys of a property list's outermost dictionary that have plain values: text, whole numbers, true and false.
 *
 * <p>Source: the plist format's document type, "PropertyList-1.0.dtd": {@code plist}, {@code dict}, {@code key}. Value
 * from memory.
 */
final class PropertyList {

    private final Map<String, String> values = new LinkedHashMap<>();

    private PropertyList() {}

    /** @throws IOException when it is no property list */
    static PropertyList parse(String xml) throws IOException {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature("http://apache.org/xml/features/nonvalidating/load-external-dtd", false);
            factory.setFeature("http://xml.org/sax/features/external-general-entities", false);
            factory.setFeature("http://xml.org/sax/features/external-parameter-entities", false);
            factory.setExpandEntityReferences(false);
            var builder = factory.newDocumentBuilder();
            builder.setErrorHandler(null);
            Element root = builder.parse(new InputSource(new StringReader(xml))).getDocumentElement();
            PropertyList list = new PropertyList();
            for (Node node = root.getFirstChild(); node != null; node = node.getNextSibling()) {
                if (node.getNodeName().equals("dict")) {
                    list.read(node);
                }
            }
            return list;
        } catch (ParserConfigurationException | SAXException e) {
            throw new IOException("the answer is no property list (" + e.getMessage() + ")", e);
        }
    }

    private void read(Node dictionary) {
        String key = null;
        for (Node node = dictionary.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node.getNodeType() != Node.ELEMENT_NODE) {
                continue;
            }
            if (node.getNodeName().equals("key")) {
                key = node.getTextContent();
            } else if (key != null) {
                switch (node.getNodeName()) {
                    case "true", "false" -> values.put(key, node.getNodeName());
                    case "string", "integer" ->
                        values.put(key, node.getTextContent().strip());
                    default -> key = null;
                }
            }
        }
    }

    Optional<String> text(String key) {
        return Optional.ofNullable(values.get(key));
    }

    boolean isTrue(String key) {
        return text(key).filter("true"::equals).isPresent();
    }

    long number(String key) {
        return text(key)
                .filter(text -> text.matches("\\d{1,18}"))
                .map(Long::parseLong)
                .orElse(0L);
    }
}
