package bootmend.chart;

import bootmend.record.ChartView;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A stair, and the ground between it and a level that it stands for too.
 *
 * @param ground empty where nothing is to be drawn there
 * @param level up or down to where the ground reaches
 */
record Stairs(List<ChartView.Corner> corners, double level, Ink line, Optional<Ink> ground) implements Layer {

    @Override
    public void draw(Plot plot) {
        if (corners.isEmpty()) {
            return;
        }
        List<Part.Point> points = new ArrayList<>();
        for (int i = 0; i < corners.size(); i++) {
            if (turns(i)) {
                points.add(new Part.Point(
                        plot.x(corners.get(i).clock()), plot.y(corners.get(i).amount())));
            }
        }
        List<Part.Point> around = new ArrayList<>(points);
        around.add(new Part.Point(points.get(points.size() - 1).x(), plot.y(level)));
        around.add(new Part.Point(points.get(0).x(), plot.y(level)));
        ground.ifPresent(ink -> plot.add(new Part.Line(ink, true, around)));
        plot.add(new Part.Line(line, false, points));
    }

    private boolean turns(int i) {
        return i == 0
                || i == corners.size() - 1
                || corners.get(i - 1).amount() != corners.get(i).amount()
                || corners.get(i + 1).amount() != corners.get(i).amount();
    }
}
