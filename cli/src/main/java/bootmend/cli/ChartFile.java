package bootmend.cli;

import bootmend.CardException;
import bootmend.job.TrialReport;
import de.erichseifert.vectorgraphics2d.Processors;
import de.erichseifert.vectorgraphics2d.VectorGraphics2D;
import de.erichseifert.vectorgraphics2d.util.PageSize;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;
import org.jfree.chart.JFreeChart;

/** Turns a chart into the bytes of a picture file; needs no screen. */
enum ChartFile {
    /** Lines and letters, for print. */
    SVG {
        @Override
        byte[] draw(JFreeChart chart) throws IOException {
            VectorGraphics2D graphics = new VectorGraphics2D();
            chart.draw(graphics, new Rectangle2D.Double(0, 0, WIDTH, HEIGHT));
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            Processors.get("svg").getDocument(graphics.getCommands(), new PageSize(WIDTH, HEIGHT)).writeTo(out);
            return withFonts(out.toString(StandardCharsets.UTF_8)).getBytes(StandardCharsets.UTF_8);
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

    private static final int WIDTH = 1000;
    private static final int HEIGHT = 860;
    private static final int SCALE = 2;
    /** Faces as wide as the one the text was measured with, or narrower. */
    private static final String FACES = "'DejaVu Sans', Verdana, Arial, sans-serif";

    abstract byte[] draw(JFreeChart chart) throws IOException;

    /** @throws CardException if this computer's Java cannot draw */
    byte[] of(TrialReport report) throws CardException {
        try {
            return draw(TrialChart.of(report));
        } catch (IOException | LinkageError | InternalError e) {
            throw CardException.refused("this computer's Java cannot draw the chart (" + e.getMessage() + ")",
                    "Install a Java that is not cut down, with fontconfig and one font, or read `bootmend trial advise`.",
                    e);
        }
    }

    /** Names faces that viewers have; Java's own name for its default face means nothing to them. */
    private static String withFonts(String svg) {
        return svg.replaceAll("font-family=\"[^\"]*\"", "font-family=\"" + FACES + "\"")
                .replaceAll("font-family:\\s*[^;\"]*", "font-family:" + FACES);
    }
}
