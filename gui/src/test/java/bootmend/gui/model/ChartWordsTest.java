package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.record.ChartView;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A chart in words, and how much of one is drawn. */
class ChartWordsTest {

    private static final ChartView.Axis AXIS = new ChartView.Axis("axis", 0, 10, OptionalInt.empty());

    @TempDir
    private Path folder;

    @Test
    void theChartIsSaidInSentences() throws CardException, IOException {
        TrialsModel model = new TrialsModel(TuningDesk.filled(folder).desk);
        model.read();
        ChartWords words = new ChartWords(model.services().words());
        BoardTrials board = model.board().get().value().orElseThrow();

        assertThat(words.sentences(board))
                .contains(
                        "At 1500 MHz: step 0 held.",
                        "At 1900 MHz: step 2 failed; step 3 held.",
                        "At 2050 MHz: step 4 failed.",
                        "Above step 6: needs force_turbo, which can void the warranty.",
                        "The hottest run came to 83 degC, at 2000 MHz and voltage step 4.")
                .anyMatch(sentence -> sentence.startsWith("Drawn: 3 \u00d7 known-good"));
        assertThat(words.next(board.report().advice())).isEqualTo("Try 2050 MHz at voltage step 5.");
        assertThat(words.peak(board.report().advice()).orElseThrow())
                // Documentation repository, issue 1772: no volts follow from a step on this board.
                .startsWith("No estimate of the peak temperature: volts of over_voltage on pi4");
        assertThat(words.best(board.report().advice()))
                .isEqualTo("Fastest that held: 2000 MHz at voltage step 4, known-good.");
        assertThat(words.notes(board.report())).isEmpty();
    }

    @Test
    void trialsOnOneSpotStandTogether() {
        List<ChartSpot> spots = ChartSpot.bySteps(chart(List.of(
                point(2000, 4, ChartView.Mark.THROTTLED),
                point(2000, 4, ChartView.Mark.KNOWN_GOOD),
                point(2000, 4, ChartView.Mark.KNOWN_GOOD))));

        assertThat(spots)
                .containsExactly(
                        new ChartSpot(2000, 4, Map.of(ChartView.Mark.KNOWN_GOOD, 2, ChartView.Mark.THROTTLED, 1)));
        assertThat(ChartSpot.byPeaks(chart(List.of(point(2000, 4, ChartView.Mark.NO_BOOT)))))
                .isEmpty();
    }

    @Test
    void ofAFolderFullOfTrialsTheNewestAreDrawn() {
        List<ChartView.Point> points = LongStream.rangeClosed(1, 10_000)
                .mapToObj(clock -> point(clock, 0, ChartView.Mark.HELD))
                .toList();

        List<ChartSpot> spots = ChartSpot.bySteps(chart(points));

        assertThat(spots).hasSize(ChartSpot.MOST);
        assertThat(spots.get(0).clock()).isEqualTo(10_000);
    }

    private static ChartView.Point point(long clock, long step, ChartView.Mark mark) {
        return new ChartView.Point(clock, step, OptionalDouble.empty(), mark);
    }

    private static ChartView chart(List<ChartView.Point> points) {
        return new ChartView(
                "title",
                "subtitle",
                AXIS,
                AXIS,
                AXIS,
                points,
                new ChartView.Stair("held", List.of()),
                new ChartView.Stair("failed", List.of()),
                List.of(),
                List.of());
    }
}
