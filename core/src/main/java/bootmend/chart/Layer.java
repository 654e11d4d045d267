package bootmend.chart;

/** One kind of thing that a plot shows; layers are drawn in turn, each over those before it. */
@FunctionalInterface
interface Layer {
    void draw(Plot plot);
}
