package bootmend.trial.search;

/**
 * What one board may be like, as the search takes it: an edge clock for each voltage, and how sharp that edge is.
 *
 * <p>The edge is the clock where half of all runs of {@value Stability#MINUTES} minutes hold: {@code edge + slope x level x
 * (1 - bend x level)}. Around it the rate of failures per minute grows e-fold for each {@code width} of clock.
 *
 * @param edge in MHz, at level 0
 * @param slope in MHz a level
 * @param bend share by which the slope falls off with each level
 * @param width in MHz
 */
record Silicon(double edge, double slope, double bend, double width) {

    /** The edge clock at a voltage level, in MHz; it never falls as the level rises. */
    double edge(double level) {
        double top = bend > 0 ? Math.min(level, 1 / (2 * bend)) : level;
        return edge + slope * top * (1 - bend * top);
    }
}
