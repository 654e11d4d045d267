package bootmend.chart;

import java.io.StringWriter;
import java.util.List;
import java.util.stream.Collectors;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** A drawing as an SVG document; source: "Scalable Vector Graphics (SVG) 1.1", second edition. */
public final class SvgPicture {

    /** Faces as wide as the widest that words were fitted to, or narrower. */
    private static final String FACES = "'DejaVu Sans', Verdana, Arial, sans-serif";
    /** How wide a letter of those is at most on average, in heights. */
    private static final double LETTER = 0.62;

    private static final double BASELINE = 0.35;

    private final XMLStreamWriter xml;

    private SvgPicture(XMLStreamWriter xml) {
        this.xml = xml;
    }

    public static String of(Drawing drawing) {
        StringWriter text = new StringWriter();
        try {
            XMLStreamWriter xml = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
            new SvgPicture(xml).write(drawing);
            xml.close();
        } catch (XMLStreamException e) {
            // A text in memory does not fail.
            throw new IllegalStateException(e);
        }
        return text.toString();
    }

    private void write(Drawing drawing) throws XMLStreamException {
        xml.writeStartDocument("UTF-8", "1.0");
        xml.writeCharacters("\n");
        xml.writeStartElement("svg");
        has("xmlns", "http://www.w3.org/2000/svg");
        has("width", drawing.width());
        has("height", drawing.height());
        has("viewBox", "0 0 " + drawing.width() + " " + drawing.height());
        has("role", "img");
        has("font-family", FACES);
        words("title", drawing.title());
        words("desc", drawing.description());
        xml.writeStartElement("rect");
        has("width", drawing.width());
        has("height", drawing.height());
        has("fill", "#ffffff");
        end();
        for (Part part : drawing.parts()) {
            part(part);
        }
        end();
        xml.writeEndDocument();
    }

    private void part(Part part) throws XMLStreamException {
        if (part instanceof Part.Line line) {
            xml.writeStartElement(line.closed() ? "polygon" : "polyline");
            has("points", points(line.points()));
            ink(line.ink());
        } else if (part instanceof Part.Circle circle) {
            xml.writeStartElement("circle");
            has("cx", circle.centre().x());
            has("cy", circle.centre().y());
            has("r", circle.radius());
            ink(circle.ink());
        } else if (part instanceof Part.Words words) {
            words(words);
        } else if (part instanceof Part.Spot spot) {
            xml.writeStartElement("g");
            has(
                    "transform",
                    "translate(" + number(spot.at().x()) + " "
                            + number(spot.at().y()) + ")");
            if (!spot.hint().isEmpty()) {
                words("title", spot.hint());
            }
            for (Part each : spot.parts()) {
                part(each);
            }
        }
        end();
    }

    private void words(Part.Words words) throws XMLStreamException {
        Ink ink = words.ink();
        double left = words.from().x();
        xml.writeStartElement("text");
        switch (words.align()) {
            case LEFT -> anchor("start", left);
            case CENTRE -> anchor("middle", left + words.room() / 2);
            case RIGHT -> anchor("end", left + words.room());
        }
        has("y", words.from().y() + BASELINE * ink.size());
        has("font-size", ink.size());
        if (ink.bold()) {
            has("font-weight", "bold");
        }
        if (words.text().length() * LETTER * ink.size() > words.room()) {
            has("textLength", words.room());
            has("lengthAdjust", "spacingAndGlyphs");
        }
        ink(ink);
        xml.writeCharacters(allowed(words.text()));
    }

    private void anchor(String anchor, double x) throws XMLStreamException {
        has("text-anchor", anchor);
        has("x", x);
    }

    private void ink(Ink ink) throws XMLStreamException {
        has("fill", ink.fill().isPresent() ? colour(ink.fill().getAsInt()) : "none");
        Ink.Stroke stroke = ink.stroke();
        if (stroke.width() > 0) {
            has("stroke", colour(stroke.colour()));
            has("stroke-width", stroke.width());
            if (!stroke.dashes().isEmpty()) {
                has(
                        "stroke-dasharray",
                        stroke.dashes().stream().map(String::valueOf).collect(Collectors.joining(" ")));
            }
        }
    }

    private void words(String element, String text) throws XMLStreamException {
        xml.writeStartElement(element);
        xml.writeCharacters(allowed(text));
        end();
    }

    private void has(String attribute, String value) throws XMLStreamException {
        xml.writeAttribute(attribute, value);
    }

    private void has(String attribute, double value) throws XMLStreamException {
        has(attribute, number(value));
    }

    private void end() throws XMLStreamException {
        xml.writeEndElement();
        xml.writeCharacters("\n");
    }

    /** Without characters that no document may have; source: "Extensible Markup Language (XML) 1.0", fifth edition, 2.2. */
    private static String allowed(String text) {
        return text.codePoints()
                .map(point -> point >= 0x20 && (point < 0xD800 || point > 0xDFFF) && point != 0xFFFE && point != 0xFFFF
                        ? point
                        : 0xFFFD)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    private static String points(List<Part.Point> points) {
        return points.stream()
                .map(point -> number(point.x()) + "," + number(point.y()))
                .collect(Collectors.joining(" "));
    }

    private static String colour(int colour) {
        String digits = Integer.toHexString(colour);
        return "#" + "0".repeat(6 - digits.length()) + digits;
    }

    /** To a hundredth of a pixel. */
    private static String number(double value) {
        long hundredths = Math.round(value * 100);
        return hundredths % 100 == 0 ? Long.toString(hundredths / 100) : Double.toString(hundredths / 100.0);
    }
}
