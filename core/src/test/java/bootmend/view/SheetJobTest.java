package bootmend.view;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.fixtures.DemoCards;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.workplace.MemoryWorkplace;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A config file line by line. */
class SheetJobTest {

    private static final String CARD = "/lab-card.img";

    @Test
    void everyLineStandsThereWithItsKindAndWhatItTunes() throws CardException, IOException {
        SheetView view = sheet(
                MemoryWorkplace.card("# cart\n\n[pi4]\narm_freq=1800\n#over_voltage=2\ninclude legs.txt\n"
                        + "hdmi_safe=1\ninitramfs disk\n"),
                BoardRequest.of("pi4"));

        List<SheetLine> lines = view.files().get(0).lines();
        assertThat(lines)
                .extracting(SheetLine::kind)
                .containsExactly(
                        SheetLine.Kind.COMMENT,
                        SheetLine.Kind.BLANK,
                        SheetLine.Kind.SECTION,
                        SheetLine.Kind.SETTING,
                        SheetLine.Kind.COMMENT,
                        SheetLine.Kind.INCLUDE,
                        SheetLine.Kind.SETTING,
                        SheetLine.Kind.OTHER);
        assertThat(lines).extracting(SheetLine::number).containsExactly(1, 2, 3, 4, 5, 6, 7, 8);
        assertThat(lines.get(3).tuning().orElseThrow().effect().orElseThrow().words())
                .isEqualTo("set");
        assertThat(lines)
                .extracting(SheetLine::resets)
                .containsExactly(false, false, false, true, false, false, false, false);
        assertThat(view.boards()).contains("pi4", "cm4");
    }

    @Test
    void whatCouldHideOnALineIsWrittenOut() throws CardException, IOException {
        assertThat(sheet(MemoryWorkplace.card("arm_freq=\u001b[2J1800\n"), BoardRequest.none())
                        .files()
                        .get(0)
                        .lines()
                        .get(0)
                        .text())
                .isEqualTo("arm_freq=\\x1B[2J1800");
    }

    @Test
    void aFileWithEndlessLinesIsCutAndTheRestCounted() throws CardException, IOException {
        SheetFile file = sheet(MemoryWorkplace.card("\n".repeat(SheetJob.MOST_LINES + 7)), BoardRequest.of("pi4"))
                .files()
                .get(0);

        assertThat(file.lines()).hasSize(SheetJob.MOST_LINES);
        assertThat(file.unshown()).isEqualTo(7);
    }

    @Test
    void aCardWithoutAConfigFileStillHasAView() throws CardException, IOException {
        FatSpec spec = FatSpec.fat16(5000).build();
        SparseDisk disk = spec.emptyDisk();
        new FatBuilder(spec).file("start.elf", new byte[2000]).writeTo(disk, 0);

        SheetView view = sheet(disk, BoardRequest.none());

        assertThat(view.files()).isEmpty();
        assertThat(view.show().card().configProblem()).isPresent();
    }

    @Test
    void theDemoCardsLinesAreThoseOfItsFile() throws CardException, IOException {
        SheetView view = sheet(DemoCards.build(DemoCards.all().get(0)), BoardRequest.none());

        assertThat(view.files().get(0).lines()).anySatisfy(line -> {
            assertThat(line.text()).isEqualTo("arm_freq=2350");
            assertThat(line.number()).isEqualTo(14);
            assertThat(line.resets()).isTrue();
        });
        assertThat(view.waiting()).isEqualTo(new InterruptedChange.None());
        assertThat(view.staged()).isFalse();
    }

    private static SheetView sheet(SparseDisk disk, BoardRequest about) throws CardException, IOException {
        try (MemoryWorkplace bench = new MemoryWorkplace()) {
            bench.insert(CARD, disk);
            return new SheetJob(bench.workplace()).run(CardRequest.of(Path.of(CARD)), about);
        }
    }
}
