package bootmend.device.system;

import com.dd.plist.NSArray;
import com.dd.plist.NSDictionary;
import com.dd.plist.NSNumber;
import com.dd.plist.NSObject;
import com.dd.plist.NSString;
import com.dd.plist.PropertyListFormatException;
import com.dd.plist.XMLPropertyListParser;
import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** What a property list's dictionary says; a key that is missing or of another kind is one that says nothing. */
record PropertyList(NSDictionary dictionary) {

    /** @throws IOException when it is no property list, or one of something else than a dictionary */
    static PropertyList parse(String xml) throws IOException {
        try {
            DocumentBuilder builder = XMLPropertyListParser.getDocBuilder();
            // The default one prints to the screen.
            builder.setErrorHandler(null);
            Document document = builder.parse(new InputSource(new StringReader(xml)));
            if (XMLPropertyListParser.parse(document) instanceof NSDictionary found) {
                return new PropertyList(found);
            }
            throw new IOException("the answer is a property list of another kind");
        } catch (ParserConfigurationException | SAXException | PropertyListFormatException | RuntimeException e) {
            throw new IOException("the answer is no property list (" + e.getMessage() + ")", e);
        }
    }

    Optional<String> text(String key) {
        return dictionary.get(key) instanceof NSString text
                ? Optional.of(text.getContent().strip())
                : Optional.empty();
    }

    /** What is true, false, or not said. */
    Optional<Boolean> flag(String key) {
        return dictionary.get(key) instanceof NSNumber flag && flag.isBoolean()
                ? Optional.of(flag.boolValue())
                : Optional.empty();
    }

    boolean isTrue(String key) {
        return flag(key).orElse(false);
    }

    /** A whole number from 0 on; 0 where there is none. */
    long number(String key) {
        return dictionary.get(key) instanceof NSNumber number && number.isInteger()
                ? Math.max(0, number.longValue())
                : 0;
    }

    /** The dictionaries in an array. */
    List<PropertyList> all(String key) {
        NSObject[] found = dictionary.get(key) instanceof NSArray array ? array.getArray() : new NSObject[0];
        return Stream.of(found)
                .filter(NSDictionary.class::isInstance)
                .map(each -> new PropertyList((NSDictionary) each))
                .toList();
    }
}
