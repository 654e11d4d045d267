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
        begin(
                "svg",
                "xmlns",
                "http://www.w3.org/2000/svg",
                "width",
                number(drawing.width()),
                "height",
                number(drawing.height()),
                "viewBox",
                "0 0 " + drawing.width() + " " + drawing.height(),
                "role",
                "img",
                "font-family",
                FACES);
        words("title", drawing.title());
        words("desc", drawing.description());
        begin("rect", "width", "100%", "height", "100%", "fill", "#ffffff");
        end();
        for (Part part : drawing.parts()) {
            part(part);
        }
        end();
        xml.writeEndDocument();
    }

    private void part(Part part) throws XMLStreamException {
        if (part instanceof Part.Line line) {
            begin(line.closed() ? "polygon" : "polyline", "points", points(line.points()));
            ink(line.ink());
            end();
        } else if (part instanceof Part.Circle circle) {
            begin(
                    "circle",
                    "cx",
                    number(circle.centre().x()),
                    "cy",
                    number(circle.centre().y()),
                    "r",
                    number(circle.radius()));
            ink(circle.ink());
            end();
        } else if (part instanceof Part.Words words) {
            words(words);
        } else if (part instanceof Part.Spot spot) {
            begin(
                    "g",
                    "transform",
                    "translate(" + number(spot.at().x()) + " "
                            + number(spot.at().y()) + ")");
            if (!spot.hint().isEmpty()) {
                words("title", spot.hint());
            }
            for (Part each : spot.parts()) {
                part(each);
            }
            end();
        }
    }

    private void words(Part.Words words) throws XMLStreamException {
        Ink ink = words.ink();
        double x = words.from().x()
                + switch (words.align()) {
                    case LEFT -> 0;
                    case CENTRE -> words.room() / 2;
                    case RIGHT -> words.room();
                };
        String anchor =
                switch (words.align()) {
                    case LEFT -> "start";
                    case CENTRE -> "middle";
                    case RIGHT -> "end";
                };
        begin(
                "text",
                "x",
                number(x),
                "y",
                number(words.from().y() + BASELINE * ink.size()),
                "font-size",
                number(ink.size()),
                "text-anchor",
                anchor);
        if (ink.bold()) {
            xml.writeAttribute("font-weight", "bold");
        }
        if (words.text().length() * LETTER * ink.size() > words.room()) {
            xml.writeAttribute("textLength", number(words.room()));
            xml.writeAttribute("lengthAdjust", "spacingAndGlyphs");
        }
        ink(ink);
        xml.writeCharacters(allowed(words.text()));
        end();
    }

    private void ink(Ink ink) throws XMLStreamException {
        xml.writeAttribute("fill", ink.fill().isPresent() ? colour(ink.fill().getAsInt()) : "none");
        Ink.Stroke stroke = ink.stroke();
        if (stroke.width() > 0) {
            xml.writeAttribute("stroke", colour(stroke.colour()));
            xml.writeAttribute("stroke-width", number(stroke.width()));
            if (!stroke.dashes().isEmpty()) {
                xml.writeAttribute(
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

    /** @param attributes names and values in turn */
    private void begin(String element, String... attributes) throws XMLStreamException {
        xml.writeStartElement(element);
        for (int i = 0; i < attributes.length; i += 2) {
            xml.writeAttribute(attributes[i], attributes[i + 1]);
        }
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
