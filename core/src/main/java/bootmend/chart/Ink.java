package bootmend.chart;

import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;

/**
 * What a part of a drawing stands for, and how it looks in a picture file: dark on white, so that print and poor screens
 * keep it. A window gives each {@link #style} colours of its own.
 *
 * <p>The colours of marks are those that people with any common kind of colour blindness tell apart; source: "Color
 * Universal Design", palette of eight colours, values from memory.
 */
public enum Ink {
    PLOT_GROUND(0xFFFFFF, Stroke.of(0x202020, 1)),
    PLOT_GRID(Fill.NONE, Stroke.of(0xD8D8D8, 0.8)),
    PLOT_LIMIT(Fill.NONE, Stroke.dashed(0x5A3A00, 1.4, 2, 3)),
    BAND_WARN(0xFFF6E5, Stroke.NONE),
    GROUND_HELD(0xE3F0F8, Stroke.NONE),
    GROUND_FAILED(0xFBE9E0, Stroke.NONE),
    CHANCE_95(0xB5D5EA, Stroke.NONE),
    CHANCE_80(0xCBE2F0, Stroke.NONE),
    CHANCE_50(0xDEEDF6, Stroke.NONE),
    CHANCE_20(0xEDF5FA, Stroke.NONE),
    CHANCE_5(0xF7FAFD, Stroke.NONE),
    STAIR_HELD(Fill.NONE, Stroke.of(0x202020, 2.2)),
    STAIR_FAILED(Fill.NONE, Stroke.dashed(0x202020, 1.8, 7, 5)),
    OTHER_HELD(Fill.NONE, Stroke.dashed(0x6A3D9A, 2, 2, 3)),
    OTHER_FAILED(Fill.NONE, Stroke.dashed(0x6A3D9A, 1.4, 9, 3, 2, 3)),
    OTHER_TRIAL(Fill.NONE, Stroke.of(0x6A3D9A, 1.4)),
    TRIAL_KNOWN_GOOD(0x0072B2, Stroke.of(0x0072B2, 1)),
    TRIAL_TICK(Fill.NONE, Stroke.of(0xFFFFFF, 2)),
    TRIAL_HELD(Fill.NONE, Stroke.of(0x0072B2, 2.2)),
    TRIAL_NO_BOOT(Fill.NONE, Stroke.of(0xC04A00, 2.2)),
    TRIAL_LOCKS_UP(0xC04A00, Stroke.of(0xC04A00, 1)),
    TRIAL_MISBEHAVES(Fill.NONE, Stroke.of(0xC04A00, 2.2)),
    TRIAL_THROTTLED(Fill.NONE, Stroke.of(0x202020, 2.2)),
    TRIAL_UNDECIDED(Fill.NONE, Stroke.of(0x595959, 2.2)),
    TRIAL_NEXT(Fill.NONE, Stroke.of(0x6A3D9A, 1.8)),
    TRIAL_BEHIND(Fill.NONE, Stroke.dashed(0x6A3D9A, 1.4, 3, 2)),
    NEXT_RANGE(Fill.NONE, Stroke.of(0x6A3D9A, 2)),
    PLOT_TITLE(0x202020, Stroke.NONE, 18, true),
    PLOT_TEXT(0x202020, Stroke.NONE, 12, false),
    PLOT_NAME(0x202020, Stroke.NONE, 12, true),
    PLOT_LIMIT_TEXT(0x5A3A00, Stroke.NONE, 12, false);

    /** What stands for no colour to fill with. */
    private static final class Fill {
        static final int NONE = -1;
    }

    /**
     * A line.
     *
     * @param colour as 0xRRGGBB
     * @param width in pixels; 0 draws none
     * @param dashes lengths of strokes and gaps in turn, in pixels; none for a solid line
     */
    public record Stroke(int colour, double width, List<Integer> dashes) {

        static final Stroke NONE = new Stroke(0, 0, List.of());

        static Stroke of(int colour, double width) {
            return new Stroke(colour, width, List.of());
        }

        static Stroke dashed(int colour, double width, Integer... dashes) {
            return new Stroke(colour, width, List.of(dashes));
        }
    }

    private final int fill;
    private final Stroke stroke;
    private final int size;
    private final boolean bold;

    Ink(int fill, Stroke stroke) {
        this(fill, stroke, 0, false);
    }

    Ink(int fill, Stroke stroke, int size, boolean bold) {
        this.fill = fill;
        this.stroke = stroke;
        this.size = size;
        this.bold = bold;
    }

    /** As a style sheet names it, such as {@code plot-grid}. */
    public String style() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** What a picture file fills it with, as 0xRRGGBB; empty for nothing. */
    public OptionalInt fill() {
        return fill == Fill.NONE ? OptionalInt.empty() : OptionalInt.of(fill);
    }

    public Stroke stroke() {
        return stroke;
    }

    /** Height of words in a picture file, in pixels; 0 for what is no words. */
    public int size() {
        return size;
    }

    public boolean bold() {
        return bold;
    }
}
