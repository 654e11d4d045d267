package bootmend.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import bootmend.record.ChartView;
import bootmend.record.ChartView.Corner;
import bootmend.record.ChartView.Mark;
import bootmend.trial.HeatEstimate;
import bootmend.trial.Setting;
import bootmend.trial.search.Advice;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.LongStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** What a chart shows, read back from its parts and from the SVG document by the JDK's own reader. */
class TrialChartTest {

    private static final double WIDTH = 1050;
    private static final double HEIGHT = 886;
    /** 1440 MHz to 2040 MHz over 1000 pixels; steps from 10 down to -1 and 95 down to 40 degC over 480 and 320. */
    private static final double MHZ = 1000.0 / 600;

    private static final double STEP = 480.0 / 11;
    private static final double DEGREE = 320.0 / 55;

    @Test
    void everyTrialStandsAtItsClockAndStepAndAtItsPeak() {
        List<Part.Spot> spots = spots(chart(points()).plots(WIDTH, HEIGHT));

        assertThat(spots)
                .extracting(Part.Spot::hint)
                .containsExactlyInAnyOrder(
                        "1500 MHz at 0 (step): 1 \u00d7 known-good: held 45 minutes or more",
                        "1800 MHz at 2 (step): 1 \u00d7 failed: no boot",
                        "1900 MHz at 3 (step): 1 \u00d7 failed: locks up",
                        "1500 MHz, peak 55.0 degC: 1 \u00d7 known-good: held 45 minutes or more",
                        "1900 MHz, peak 70.5 degC: 1 \u00d7 failed: locks up",
                        "suggested next: 2020 MHz at voltage step 4",
                        "suggested next: 2020 MHz at voltage step 4");
        Part.Point first = spot(spots, "1500 MHz at").at();
        Part.Point last = spot(spots, "1900 MHz at").at();
        assertThat(last.x() - first.x()).isCloseTo(400 * MHZ, within(1e-9));
        assertThat(first.y() - last.y()).isCloseTo(3 * STEP, within(1e-9));
        assertThat(spot(spots, "1500 MHz, peak").at().y()
                        - spot(spots, "1900 MHz, peak").at().y())
                .isCloseTo(15.5 * DEGREE, within(1e-9));
    }

    @Test
    void stairsKeepTheirCornersAndLimitsTheirWords() {
        List<Part> parts = chart(points()).plots(WIDTH, HEIGHT);

        List<Part.Point> held = line(parts, Ink.STAIR_HELD).points();
        assertThat(held).hasSize(2);
        assertThat(held.get(1).x() - held.get(0).x()).isCloseTo(60 * MHZ, within(1e-9));
        assertThat(line(parts, Ink.STAIR_FAILED).points()).hasSize(4);
        assertThat(words(parts))
                .contains("above step 6", "80 degC: stay below", "step", "degC", "clock", "1500", "80", "-1");
        assertThat(parts.stream()
                        .filter(part -> part instanceof Part.Line line && line.ink() == Ink.NEXT_RANGE)
                        .map(part -> (Part.Line) part))
                .singleElement()
                .satisfies(range -> assertThat(range.points().get(0).y()
                                - range.points().get(1).y())
                        .isCloseTo(6 * DEGREE, within(1e-9)));
    }

    @Test
    void trialsOnOneSpotStandBesideEachOtherAndAreCounted() {
        List<Part> parts = chart(List.of(
                        point(2000, 4, Mark.THROTTLED),
                        point(2000, 4, Mark.KNOWN_GOOD),
                        point(2000, 4, Mark.KNOWN_GOOD)))
                .plots(WIDTH, HEIGHT);

        List<Part.Spot> spots = spots(parts).stream()
                .filter(spot -> spot.hint().startsWith("2000 MHz"))
                .toList();
        assertThat(spots)
                .hasSize(2)
                .extracting(Part.Spot::hint)
                .containsOnly("2000 MHz at 4 (step): 2 \u00d7 known-good: held 45 minutes or more; "
                        + "1 \u00d7 throttled: heat or supply");
        assertThat(spots.get(1).at().x() - spots.get(0).at().x()).isEqualTo(15);
        assertThat(words(parts)).contains("\u00d72");
        assertThat(Spots.byVoltages(view(List.of(point(2000, 4, Mark.KNOWN_GOOD))))
                        .spots())
                .containsExactly(new Spots.ChartSpot(2000, 4, Map.of(Mark.KNOWN_GOOD, 1)));
        assertThat(Spots.byPeaks(view(List.of(point(2000, 4, Mark.NO_BOOT)))).spots())
                .isEmpty();
    }

    @Test
    void ofAFolderFullOfTrialsTheNewestAreDrawn() {
        List<ChartView.Point> many = LongStream.rangeClosed(1, 10_000)
                .mapToObj(clock -> point(clock, 0, Mark.HELD))
                .toList();

        List<Spots.ChartSpot> spots = Spots.byVoltages(view(many)).spots();

        assertThat(spots).hasSize(Spots.MOST);
        assertThat(spots.get(0).clock()).isEqualTo(10_000);
        assertThat(chart(many).leftOut()).hasValue("Only the newest 600 places are drawn.");
        assertThat(chart(points()).leftOut()).isEmpty();
    }

    @Test
    void everyMarkHasAShapeOfItsOwnWithoutItsColour() {
        Set<String> shapes = new HashSet<>();
        for (Mark mark : Mark.values()) {
            StringBuilder shape = new StringBuilder();
            for (Part part : TrialSign.of(mark)) {
                if (part instanceof Part.Circle circle) {
                    shape.append(circle.ink().fill().isPresent()).append(circle.radius());
                } else if (part instanceof Part.Line line) {
                    shape.append(line.ink().fill().isPresent())
                            .append(line.closed())
                            .append(line.points());
                }
            }
            shapes.add(shape.toString());
        }

        assertThat(shapes).hasSameSizeAs(Mark.values());
    }

    @Test
    void whereThereIsNoRoomNothingIsDrawn() {
        assertThat(chart(points()).plots(50, 300)).isEmpty();
        assertThat(chart(points()).plots(300, 86)).isEmpty();
        assertThat(chart(points()).plots(0, 0)).isEmpty();
    }

    /** Source: "Scalable Vector Graphics (SVG) 1.1", second edition, 5.1 and 5.4. */
    @Test
    void theSvgDocumentHasWhatTheChartHas() throws Exception {
        Drawing picture = chart(points()).picture();
        Document document = read(SvgPicture.of(picture));

        Element svg = document.getDocumentElement();
        assertThat(svg.getNamespaceURI()).isEqualTo("http://www.w3.org/2000/svg");
        assertThat(svg.getAttribute("viewBox")).isEqualTo("0 0 1000 " + picture.height());
        assertThat(texts(document, "title"))
                .contains("Trials of <lab> & \"co\"", "suggested next: 2020 MHz at voltage step 4");
        assertThat(texts(document, "text"))
                .contains(
                        "Trials of <lab> & \"co\"",
                        "failed: locks up",
                        "lowest step that held",
                        "what is suggested next, below with the estimated peak",
                        "80 degC: stay below");
        assertThat(document.getElementsByTagName("circle").getLength()).isEqualTo(2 + 1 + 2 + 1);
        assertThat(document.getElementsByTagName("script").getLength()).isZero();
    }

    @Test
    void wordsThatAreTooLongForTheirRoomAreFittedAndNeverCut() throws Exception {
        String title = "lab \u0001\ud800 ".repeat(40);
        Drawing drawing = new Drawing(
                100,
                50,
                title,
                "",
                List.of(new Part.Words(Ink.PLOT_TITLE, Part.Align.LEFT, new Part.Point(0, 9), 90, title)));

        Element text = (Element)
                read(SvgPicture.of(drawing)).getElementsByTagName("text").item(0);

        assertThat(text.getAttribute("textLength")).isEqualTo("90");
        assertThat(text.getTextContent()).isEqualTo("lab \ufffd\ufffd ".repeat(40));
    }

    private static Document read(String svg) throws Exception {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    }

    private static List<String> texts(Document document, String element) {
        NodeList found = document.getElementsByTagName(element);
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            texts.add(found.item(i).getTextContent());
        }
        return texts;
    }

    private static List<String> words(List<Part> parts) {
        return parts.stream()
                .filter(Part.Words.class::isInstance)
                .map(part -> ((Part.Words) part).text())
                .toList();
    }

    private static Part.Line line(List<Part> parts, Ink ink) {
        return parts.stream()
                .filter(part -> part instanceof Part.Line line && line.ink() == ink)
                .map(Part.Line.class::cast)
                .findFirst()
                .orElseThrow();
    }

    private static List<Part.Spot> spots(List<Part> parts) {
        return parts.stream()
                .filter(Part.Spot.class::isInstance)
                .map(Part.Spot.class::cast)
                .toList();
    }

    private static Part.Spot spot(List<Part.Spot> spots, String hint) {
        return spots.stream()
                .filter(spot -> spot.hint().startsWith(hint))
                .findFirst()
                .orElseThrow();
    }

    private static List<ChartView.Point> points() {
        return List.of(
                new ChartView.Point(1500, OptionalDouble.of(0), OptionalDouble.of(55), Mark.KNOWN_GOOD),
                point(1800, 2, Mark.NO_BOOT),
                new ChartView.Point(1900, OptionalDouble.of(3), OptionalDouble.of(70.5), Mark.LOCKS_UP));
    }

    private static ChartView.Point point(long clock, long step, Mark mark) {
        return new ChartView.Point(clock, OptionalDouble.of(step), OptionalDouble.empty(), mark);
    }

    private static TrialChart chart(List<ChartView.Point> points) {
        Advice advice = new Advice(
                Advice.Action.TRY,
                Optional.of(Setting.fixed(2020, 4)),
                OptionalDouble.of(10),
                OptionalDouble.empty(),
                "",
                "",
                List.of(),
                List.of(),
                List.of(),
                Optional.of(new HeatEstimate.Peak(72, 3)),
                "",
                Optional.empty(),
                false);
        return new TrialChart(view(points), advice);
    }

    private static ChartView view(List<ChartView.Point> points) {
        return new ChartView(
                "Trials of <lab> & \"co\"",
                "subtitle",
                new ChartView.Axis("clock", 1440, 1960, OptionalInt.empty()),
                new ChartView.Axis("step", -1, 10, OptionalInt.of(1)),
                new ChartView.Axis("degC", 40, 95, OptionalInt.of(10)),
                points,
                List.of(),
                List.of(new ChartView.Next(2020, 4, 0, "2020 MHz at voltage step 4")),
                Optional.empty(),
                new ChartView.Stair("lowest step that held", List.of(new Corner(1440, 0), new Corner(1500, 0))),
                new ChartView.Stair(
                        "highest step that failed",
                        List.of(
                                new Corner(1800, 2),
                                new Corner(1850, 2),
                                new Corner(1900, 2),
                                new Corner(1900, 3),
                                new Corner(1960, 3))),
                List.of(new ChartView.Limit(6, "above step 6", true)),
                List.of(new ChartView.Limit(80, "80 degC: stay below", false)));
    }
}
