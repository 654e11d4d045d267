package bootmend.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.earlier.EarlierVersion;
import bootmend.earlier.SearchProgress;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.view.EarlierJob;
import bootmend.view.EarlierView;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Cards whose config file mtools wrote again and again; every text that still stands in their bytes is found. */
class MtoolsEarlierTest {

    private static final int EDITS = 8;

    @TempDir
    private Path folder;

    @BeforeEach
    void needTools() {
        Tool.need("mkfs.fat", "mcopy", "mdel", "mren");
    }

    private static String text(int edit) {
        return "# edit " + edit + "\n[all]\narm_freq=" + (1500 + edit) + "\n" + "dtparam=spi=on\n".repeat(edit * 9);
    }

    @ParameterizedTest(name = "FAT{0}, {1} sectors a cluster, by {3}")
    @CsvSource({
        "16, 4, 32768, over",
        "16, 1, 8192, delete",
        "32, 1, 40000, over",
        "32, 1, 40000, delete",
        "32, 4, 200000, rename",
        "12, 2, 2880, rename"
    })
    void whatStillStandsIsFoundNewestFirst(int bits, int perCluster, int kibibytes, String way)
            throws CardException, IOException {
        Path card = folder.resolve("card.img");
        Images.create(card, kibibytes * 1024L);
        Tool.run("mkfs.fat", "-F", "" + bits, "-s", "" + perCluster, card.toString());
        for (int edit = 1; edit <= EDITS; edit++) {
            write(card, edit, way);
        }

        EarlierView view = new EarlierJob(Workplace.ofThisComputer(folder.resolve("home")))
                .run(CardRequest.of(card), BoardRequest.none(), SearchProgress.TO_THE_END);

        List<Integer> found = new ArrayList<>();
        for (var version : view.versions()) {
            assertThat(written(version.version()))
                    .as("%s", version.version().places())
                    .isPositive();
            if (version.version().whole()) {
                found.add(written(version.version()));
            }
        }
        assertThat(found).containsExactlyInAnyOrderElementsOf(standing(card));
        System.out.println(
                "mtools, FAT" + bits + ", " + way + ": " + found + " of " + (EDITS - 1) + " earlier versions");
    }

    private void write(Path card, int edit, String way) throws IOException {
        Path source = Files.writeString(folder.resolve("text"), text(edit));
        if (way.equals("over")) {
            Tool.run("mcopy", "-o", "-i", card.toString(), source.toString(), "::config.txt");
            return;
        }
        if (way.equals("delete")) {
            if (edit > 1) {
                Tool.run("mdel", "-i", card.toString(), "::config.txt");
            }
            Tool.run("mcopy", "-i", card.toString(), source.toString(), "::config.txt");
            return;
        }
        Tool.run("mcopy", "-i", card.toString(), source.toString(), "::config.new");
        if (edit > 1) {
            Tool.run("mdel", "-i", card.toString(), "::config.txt");
        }
        Tool.run("mren", "-i", card.toString(), "::config.new", "::config.txt");
    }

    /** The edit whose text this is, or of whose text this is a part; 0 for none. */
    private static int written(EarlierVersion version) {
        String there = new String(version.text(), StandardCharsets.US_ASCII);
        for (int edit = EDITS; edit >= 1; edit--) {
            if (version.whole() ? text(edit).equals(there) : text(edit).contains(there)) {
                return edit;
            }
        }
        return 0;
    }

    /** Earlier edits whose text stands whole in the card's bytes. */
    private static Set<Integer> standing(Path card) throws IOException {
        String bytes = Files.readString(card, StandardCharsets.ISO_8859_1);
        Set<Integer> standing = new TreeSet<>();
        for (int edit = 1; edit < EDITS; edit++) {
            if (bytes.contains(text(edit) + "\0")) {
                standing.add(edit);
            }
        }
        return standing;
    }
}
