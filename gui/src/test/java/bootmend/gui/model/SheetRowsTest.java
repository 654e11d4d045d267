package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.gui.SmallCards;
import bootmend.gui.text.Words;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.view.SheetJob;
import bootmend.view.SheetView;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The sheet's rows and the tiles above them. */
class SheetRowsTest {

    private static final String CONFIG =
            "# cart\narm_freq=1800\narm_freq=2000\nover_voltage=6\n#gpu_freq=600\n[pi5]\n" + "arm_freq=2800\n";

    private final Words words = new Words(Locale.ENGLISH);

    @TempDir
    private Path folder;

    @Test
    void everyLineSaysBesideItWhatItComesToOnTheBoard() throws CardException, IOException {
        List<SheetRow> rows = new SheetRows(words).of(sheet(BoardRequest.of("pi4")), (file, line) -> List.of());

        // Stock clock of 1500 MHz: "Overclocking options", config_txt/overclocking.adoc, commit
        // 6e5f9446.
        assertThat(rows)
                .extracting(row -> ((SheetRow.Line) row).beside())
                .containsExactly(
                        "",
                        "shadowed by line 3",
                        "2000 MHz, +33 % against stock",
                        "6 steps",
                        "commented out",
                        "",
                        "not for this board");
        assertThat(rows)
                .extracting(row -> ((SheetRow.Line) row).tone())
                .containsExactly(
                        SheetRow.Tone.QUIET,
                        SheetRow.Tone.IDLE,
                        SheetRow.Tone.COUNTS,
                        SheetRow.Tone.COUNTS,
                        SheetRow.Tone.QUIET,
                        SheetRow.Tone.PLAIN,
                        SheetRow.Tone.IDLE);
    }

    @Test
    void aLineThatSetsSeveralClocksAlikeSaysTheirValue() throws CardException, IOException {
        Path card = SmallCards.write(folder, "lab-02.img", "gpu_freq=750\n");
        SheetView view = new SheetJob(Workplace.ofThisComputer(folder.resolve("home")))
                .run(CardRequest.of(card), BoardRequest.of("pi4"));

        // Stock of 500 MHz for each clock that gpu_freq sets on pi4: the same page as above.
        assertThat(new SheetRows(words).of(view, (file, line) -> List.of()))
                .extracting(row -> ((SheetRow.Line) row).beside())
                .containsExactly("750 MHz, +50 % against stock");
    }

    @Test
    void withoutABoardALineThatIsActiveStandsOut() throws CardException, IOException {
        List<SheetRow> rows = new SheetRows(words).of(sheet(BoardRequest.none()), (file, line) -> List.of());

        assertThat(((SheetRow.Line) rows.get(2)).tone()).isEqualTo(SheetRow.Tone.COUNTS);
        assertThat(((SheetRow.Line) rows.get(2)).beside()).startsWith("2000 MHz");
    }

    @Test
    void aTileForEachSettingOfTheBoard() throws CardException, IOException {
        assertThat(BoardTile.of(sheet(BoardRequest.of("pi4")).show(), words))
                .containsExactly(
                        new BoardTile("arm_freq", "2000 MHz", "+33 % against stock", "set"),
                        new BoardTile("over_voltage", "6 steps", "stock 0", "set"));
    }

    @Test
    void withoutABoardATileSaysWhereBoardsDiffer() throws CardException, IOException {
        assertThat(BoardTile.of(sheet(BoardRequest.none()).show(), words))
                .first()
                .satisfies(tile -> {
                    assertThat(tile.key()).isEqualTo("arm_freq");
                    assertThat(tile.state()).isIn("set", "differs");
                });
    }

    private SheetView sheet(BoardRequest board) throws CardException, IOException {
        Path card = SmallCards.write(folder, "lab-01.img", CONFIG);
        return new SheetJob(Workplace.ofThisComputer(folder.resolve("home"))).run(CardRequest.of(card), board);
    }
}
