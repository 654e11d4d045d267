package bootmend.chart;

import java.util.List;

/**
 * A whole picture.
 *
 * @param width in pixels
 * @param height in pixels
 * @param title what it is a picture of
 * @param description what it shows, for who cannot see it
 * @param parts from back to front
 */
public record Drawing(int width, int height, String title, String description, List<Part> parts) {

    public Drawing {
        parts = List.copyOf(parts);
    }
}
