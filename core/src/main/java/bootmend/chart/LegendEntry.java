package bootmend.chart;

import java.util.List;

/**
 * What a shape or line means.
 *
 * @param sign around the point 0, 0, no more than 14 pixels from it
 */
public record LegendEntry(List<Part> sign, String words) {

    public LegendEntry {
        sign = List.copyOf(sign);
    }
}
