package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.finding.Purpose;
import bootmend.gui.SmallCards;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where a packing slip may be saved, and that it is whole there. */
class SlipModelTest {

    @TempDir
    private Path folder;

    private Path slips;
    private Path image;
    private CardModel card;

    @BeforeEach
    void open() throws IOException {
        image = SmallCards.write(folder, "lab 07.img", "arm_freq=2000\n");
        slips = Files.createDirectory(folder.resolve("slips"));
        card = new ModelDesk(folder.resolve("home")).open(image);
    }

    @Test
    void theSlipIsSavedWithTheCardsLabelAndVerdict() throws IOException {
        Path file = slips.resolve(card.slip().suggestedName());
        card.slip().save(file);

        assertThat(card.slip().saved().get().value()).contains(file);
        assertThat(file).hasFileName("packing-slip-lab-07.img.html");
        assertThat(Files.readString(file))
                .startsWith("<!DOCTYPE html>")
                .endsWith("</html>\n")
                .contains("lab 07.img", "Label</dt><dd>LAB<", "Not ready to ship", "to ship, ");
        assertThat(names(slips)).containsExactly("packing-slip-lab-07.img.html");
    }

    @Test
    void aSlipThatIsThereIsReplaced() throws IOException {
        Path file = Files.writeString(slips.resolve("slip.html"), "the old one");
        card.slip().save(file);
        assertThat(Files.readString(file)).contains("Label</dt><dd>LAB<").doesNotContain("the old one");
    }

    @Test
    void whatIsNoPageIsLeftAlone() throws IOException {
        Path other = Files.writeString(slips.resolve("lab-08.img"), "a card");
        card.slip().save(other);

        assertThat(card.slip().saved().get().error().orElseThrow()).hasMessageContaining("left alone");
        assertThat(Files.readString(other)).isEqualTo("a card");
        assertThat(names(slips)).containsExactly("lab-08.img");
    }

    @Test
    void theCardItselfIsNeverReplaced() throws IOException {
        Path page = Files.createLink(folder.resolve("card.html"), image);
        byte[] before = Files.readAllBytes(image);
        card.slip().save(page);

        assertThat(card.slip().saved().get().error().orElseThrow()).hasMessageContaining("is the card");
        assertThat(Files.readAllBytes(page)).isEqualTo(before);
    }

    @Test
    void noSlipGoesIntoAMountedCard() throws IOException {
        Path mounted = SmallCards.mounted(folder, "arm_freq=2000\n");
        CardModel ofFolder = new ModelDesk(folder.resolve("home")).open(mounted);
        assertThat(ofFolder.check().get().error()).isEmpty();

        ofFolder.slip().save(mounted.resolve("slip.html"));

        assertThat(ofFolder.slip().saved().get().error().orElseThrow()).hasMessageContaining("on the card");
        assertThat(names(mounted)).containsExactly("config.txt", "start4.elf");
    }

    @Test
    void aFolderThatIsNotThereIsTold() {
        card.slip().save(slips.resolve("none").resolve("slip.html"));
        assertThat(card.slip().saved().get().error().orElseThrow()).hasMessageContaining("could not be written");
    }

    @Test
    void anotherCheckIsAnotherSlip() {
        card.slip().save(slips.resolve("slip.html"));
        card.setPurpose(Purpose.STABILITY_RUN);
        assertThat(card.slip().saved().get()).isInstanceOf(Reading.Unasked.class);
        assertThat(card.slip().content().orElseThrow().verdict()).contains("for a stability run");
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }
}
