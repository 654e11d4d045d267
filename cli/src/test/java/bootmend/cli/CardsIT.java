package bootmend.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code bootmend cards} on the packaged jar, whatever disks this computer has. */
class CardsIT {

    @TempDir
    private Path folder;

    @Test
    void listsDisksAsOneJsonDocumentWithoutAWordBesideIt() throws Exception {
        Bootmend.Result result = new Bootmend(folder).run("cards", "--json");

        assertThat(result.code()).isZero();
        assertThat(result.err()).isEmpty();
        JsonNode cards = new ObjectMapper().readTree(result.out()).at("/cards");
        assertThat(cards.isArray()).isTrue();
        for (JsonNode card : cards) {
            assertThat(card.at("/path").asText()).isNotEmpty();
            assertThat(card.at("/bytes").asLong()).isPositive();
            assertThat(card.at("/boot").asText()).isIn("yes", "no", "unknown");
        }
    }
}
