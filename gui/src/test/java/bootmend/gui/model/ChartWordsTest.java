package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A chart in words. */
class ChartWordsTest {

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
                        "At 1500 MHz: with voltage left to the board it held.",
                        "At 1900 MHz: at voltage step 2 it failed; at voltage step 3 it held.",
                        "At 2050 MHz: at voltage step 4 it failed.",
                        "Above step 6: needs force_turbo, which can void the warranty.",
                        "The hottest run came to 83 degC, at 2000 MHz.")
                .anyMatch(sentence -> sentence.startsWith("Drawn: 3 \u00d7 known-good"));
        assertThat(words.next(board.report().advice()))
                .isEqualTo("Try 2075 MHz at voltage step 5 for 12 minutes under full load.");
        assertThat(words.peak(board.report().advice()).orElseThrow())
                // Documentation repository, issue 1772: no volts follow from a step on this board.
                .startsWith("Estimated peak: ");
        assertThat(words.best(board.report().advice()))
                .isEqualTo("Fastest that held: 2000 MHz at voltage step 4, known-good.");
        assertThat(words.notes(board.report())).isEmpty();
    }
}
