package bootmend.cli.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;

/** The bar of a batch draws how far it is, and leaves an empty line. */
class BatchBarTest {

    @Test
    void theBarIsDrawnAndWipedAway() {
        List<String> drawn = new CopyOnWriteArrayList<>();
        try (BatchBar bar = BatchBar.onTerminal("reset", 4, drawn::add)) {
            bar.step();
            bar.step();
            bar.step();
            bar.step();
        }
        assertThat(drawn).anyMatch(text -> text.contains("reset") && text.contains("4/4 cards"));
        assertThat(drawn.get(drawn.size() - 1)).isBlank();
    }

    @Test
    void withoutATerminalNothingIsDrawn() {
        try (BatchBar bar = BatchBar.none()) {
            bar.step();
        }
    }
}
