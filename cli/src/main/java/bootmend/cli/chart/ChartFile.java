package bootmend.cli.chart;

import bootmend.CardException;
import bootmend.record.ChartView;
import de.erichseifert.vectorgraphics2d.Processors;
import de.erichseifert.vectorgraphics2d.VectorGraphics2D;
import de.erichseifert.vectorgraphics2d.util.PageSize;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.font.GlyphVector;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;
import org.jfree.chart.JFreeChart;

/** Turns a chart into the bytes of a picture file; needs no screen. */
public enum ChartFile {
    /** Lines and letters, for print. */
    SVG {
        @Override
        byte[] draw(JFreeChart chart) throws IOException {
            VectorGraphics2D graphics = new FilledLetters();
            chart.draw(graphics, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            Processors.get("svg")
                    .getDocument(graphics.getCommands(), new PageSize(WIDTH, HEIGHT))
                    .writeTo(out);
            return described(withFonts(out.toString(StandardCharsets.UTF_8)), chart)
                    .getBytes(StandardCharsets.UTF_8);
        }
    },
    /** Pixels, two for each point of the drawing. */
    PNG {
        @Override
        byte[] draw(JFreeChart chart) throws IOException {
            BufferedImage image = new BufferedImage(WIDTH * SCALE, HEIGHT * SCALE, BufferedImage.TYPE_INT_RGB);
            Graphics2D graphics = image.createGraphics();
            graphics.setColor(Color.WHITE);
            graphics.fillRect(0, 0, WIDTH * SCALE, HEIGHT * SCALE);
            graphics.scale(SCALE, SCALE);
            graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            graphics.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
            chart.draw(graphics, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
            graphics.dispose();
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ImageIO.write(image, "png", out);
            return out.toByteArray();
        }
    };

    /** Turned letters reach the drawing as outlines, which it would only draw around. */
    private static final class FilledLetters extends VectorGraphics2D {

        @Override
        public void drawGlyphVector(GlyphVector letters, float x, float y) {
            fill(letters.getOutline(x, y));
        }
    }

    private static final int WIDTH = 1000;
    private static final int HEIGHT = 860;
    private static final int SCALE = 2;
    /** Faces as wide as the one the text was measured with, or narrower. */
    private static final String FACES = "'DejaVu Sans', Verdana, Arial, sans-serif";

    abstract byte[] draw(JFreeChart chart) throws IOException;

    /** @throws CardException if this computer's Java cannot draw */
    public byte[] of(ChartView view) throws CardException {
        try {
            return draw(TrialChart.of(view));
        } catch (IOException | LinkageError | InternalError e) {
            throw CardException.refused(
                    "this computer's Java cannot draw the chart (" + e.getMessage() + ")",
                    "Install a Java that is not cut down, with fontconfig and one font, or read `bootmend trial advise`.",
                    e);
        }
    }

    /**
     * Names faces that viewers have, for Java's own name of its default face means nothing to them, and the size that the
     * drawing leaves out where it is 12. The document type goes: some readers would fetch it from the network.
     */
    private static String withFonts(String svg) {
        return svg.replaceFirst("<!DOCTYPE[^>]*>\\s*", "")
                .replaceAll("font-family:(&quot;[^&]*&quot;|[^;\"]*);", "")
                .replaceFirst("<svg ", "<svg font-family=\"" + FACES + "\" font-size=\"12px\" ");
    }

    /** Gives the picture a title and a description for who cannot see it. */
    private static String described(String svg, JFreeChart chart) {
        String title = escaped(chart.getTitle().getText());
        int start = svg.indexOf('>', svg.indexOf("<svg ")) + 1;
        return svg.substring(0, start) + "\n  <title>" + title
                + "</title>\n  <desc>Clock against voltage step, with what held "
                + "and what failed; below it, clock against peak temperature. `bootmend trial advise` has it in words."
                + "</desc>" + svg.substring(start);
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
