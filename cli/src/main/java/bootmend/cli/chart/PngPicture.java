package bootmend.cli.chart;

import bootmend.CardException;
import bootmend.chart.Drawing;
import bootmend.chart.Ink;
import bootmend.chart.Part;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.ImageIO;

/** A drawing as a PNG file, two pixels for each of its own; needs no screen. */
public final class PngPicture {

    private static final int SCALE = 2;
    private static final float BASELINE = 0.35f;

    private final Graphics2D graphics;

    private PngPicture(Graphics2D graphics) {
        this.graphics = graphics;
    }

    /** @throws CardException if this computer's Java cannot draw */
    public static byte[] of(Drawing drawing) throws CardException {
        // A picture file needs no screen; without this, some systems would open an application's window for it.
        System.setProperty("java.awt.headless", "true");
        try {
            return draw(drawing);
        } catch (IOException | LinkageError | InternalError e) {
            throw CardException.refused(
                    "this computer's Java cannot draw in pixels (" + e.getMessage() + ")",
                    "Name the picture .svg, or install a Java that is not cut down, with fontconfig and one font.",
                    e);
        }
    }

    private static byte[] draw(Drawing drawing) throws IOException {
        BufferedImage image =
                new BufferedImage(drawing.width() * SCALE, drawing.height() * SCALE, BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = image.createGraphics();
        graphics.setColor(Color.WHITE);
        graphics.fillRect(0, 0, image.getWidth(), image.getHeight());
        graphics.scale(SCALE, SCALE);
        graphics.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        graphics.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        PngPicture picture = new PngPicture(graphics);
        drawing.parts().forEach(picture::part);
        graphics.dispose();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(image, "png", out);
        return out.toByteArray();
    }

    private void part(Part part) {
        if (part instanceof Part.Line line) {
            shape(line.ink(), path(line));
        } else if (part instanceof Part.Circle circle) {
            double radius = circle.radius();
            shape(
                    circle.ink(),
                    new Ellipse2D.Double(
                            circle.centre().x() - radius, circle.centre().y() - radius, 2 * radius, 2 * radius));
        } else if (part instanceof Part.Words words) {
            words(words);
        } else if (part instanceof Part.Spot spot) {
            AffineTransform before = graphics.getTransform();
            graphics.translate(spot.at().x(), spot.at().y());
            spot.parts().forEach(this::part);
            graphics.setTransform(before);
        }
    }

    private static Shape path(Part.Line line) {
        Path2D path = new Path2D.Double();
        for (Part.Point point : line.points()) {
            if (path.getCurrentPoint() == null) {
                path.moveTo(point.x(), point.y());
            } else {
                path.lineTo(point.x(), point.y());
            }
        }
        if (line.closed()) {
            path.closePath();
        }
        return path;
    }

    private void shape(Ink ink, Shape shape) {
        if (ink.fill().isPresent()) {
            graphics.setColor(new Color(ink.fill().getAsInt()));
            graphics.fill(shape);
        }
        Ink.Stroke stroke = ink.stroke();
        if (stroke.width() > 0) {
            graphics.setColor(new Color(stroke.colour()));
            graphics.setStroke(stroke(stroke));
            graphics.draw(shape);
        }
    }

    private static BasicStroke stroke(Ink.Stroke stroke) {
        float[] dashes = new float[stroke.dashes().size()];
        for (int i = 0; i < dashes.length; i++) {
            dashes[i] = stroke.dashes().get(i);
        }
        return new BasicStroke(
                (float) stroke.width(),
                BasicStroke.CAP_BUTT,
                BasicStroke.JOIN_MITER,
                10,
                dashes.length == 0 ? null : dashes,
                0);
    }

    private void words(Part.Words words) {
        Ink ink = words.ink();
        Font font = new Font(Font.SANS_SERIF, ink.bold() ? Font.BOLD : Font.PLAIN, ink.size());
        double width = graphics.getFontMetrics(font).stringWidth(words.text());
        if (width > words.room()) {
            font = font.deriveFont((float) (ink.size() * words.room() / width));
            width = words.room();
        }
        double aside =
                switch (words.align()) {
                    case LEFT -> 0;
                    case CENTRE -> (words.room() - width) / 2;
                    case RIGHT -> words.room() - width;
                };
        graphics.setFont(font);
        graphics.setColor(new Color(ink.fill().orElse(0)));
        graphics.drawString(
                words.text(),
                (float) (words.from().x() + aside),
                (float) words.from().y() + BASELINE * ink.size());
    }
}
