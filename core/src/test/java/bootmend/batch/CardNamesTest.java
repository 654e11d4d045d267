package bootmend.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import bootmend.CardException;
import bootmend.NextStep;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

class CardNamesTest {

    @TempDir
    private Path folder;

    @BeforeEach
    void fill() throws IOException {
        for (String name : List.of("b.img", "a.IMG", "c.raw", "d.bin", "e.img.xz", "notes.txt", "x[1].img")) {
            Files.createFile(folder.resolve(name));
        }
        Files.createDirectories(folder.resolve("deeper.img"));
        Files.createFile(folder.resolve("deeper.img/z.img"));
    }

    @Test
    void aFolderGivesItsImagesByName() throws CardException, IOException {
        assertThat(names(false, folder.toString())).containsExactly("a.IMG", "b.img", "c.raw", "d.bin", "x[1].img");
    }

    @Test
    void packedImagesCountForReadersAlone() throws CardException, IOException {
        assertThat(names(true, folder.toString())).contains("e.img.xz");
    }

    @Test
    void aPatternIsFilledIn() throws CardException, IOException {
        assertThat(names(false, folder.resolve("*.{img,raw}").toString()))
                .containsExactly("b.img", "c.raw", "x[1].img");
    }

    @Test
    void aFileWhoseNameLooksLikeAPatternIsThatFile() throws CardException, IOException {
        assertThat(names(false, folder.resolve("x[1].img").toString())).containsExactly("x[1].img");
    }

    @Test
    @Timeout(20)
    void whatIsNoCardIsLeftOutOfPatternsAndFolders() throws Exception {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/mkfifo")), "no mkfifo here: skipped");
        Path pipe = folder.resolve("p.img");
        assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor())
                .isZero();
        Files.createSymbolicLink(folder.resolve("q.img"), pipe);
        Files.createFile(folder.resolve("._b.img"));

        assertThat(names(false, folder.resolve("*.img").toString())).containsExactly("b.img", "x[1].img");
        assertThat(names(false, folder.toString())).doesNotContain("p.img", "q.img", "._b.img");
        assertThat(names(false, folder.resolve("._b.img").toString()))
                .as("what is named outright is what is meant")
                .containsExactly("._b.img");
    }

    @Test
    @Timeout(20)
    void whatIsLeftOutIsCountedByReason() throws Exception {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/mkfifo")), "no mkfifo here: skipped");
        Path pipe = folder.resolve("p.img");
        assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor())
                .isZero();
        Files.createSymbolicLink(folder.resolve("q.img"), pipe);
        Files.createSymbolicLink(folder.resolve("zero.img"), Path.of("/dev/zero"));
        Files.createSymbolicLink(folder.resolve("lost.img"), folder.resolve("gone"));
        Files.createFile(folder.resolve("._b.img"));

        NamedCards all = new CardNames(false)
                .expand(List.of(folder.toString(), folder.resolve("*.img*").toString()));

        assertThat(all.leftOut())
                .isEqualTo(Map.of(
                        LeftOut.PIPE, 2,
                        LeftOut.CHARACTER_DEVICE, 1,
                        LeftOut.LOST_LINK, 1,
                        LeftOut.FOLDER, 1,
                        LeftOut.DESKTOP, 1,
                        LeftOut.PACKED, 1));
        assertThat(all.note())
                .hasValue("Left out: 2 named pipes; 1 character device; 1 link that leads nowhere; 1 folder inside, "
                        + "which is named by itself; 1 file that a desktop keeps beside others (._*); 1 packed image, "
                        + "which is changed only unpacked.");
        assertThat(new CardNames(true).expand(List.of(folder.toString())).leftOut())
                .as("packed images are read as they are")
                .doesNotContainKey(LeftOut.PACKED);
        assertThat(new CardNames(false)
                        .expand(List.of(folder.resolve("[bcdx]*").toString()))
                        .note())
                .as("files of other names are not spoken of")
                .hasValue("Left out: 1 folder inside, which is named by itself.");
        assertThatThrownBy(() ->
                        new CardNames(false).expand(List.of(folder.resolve("p*").toString())))
                .matches(
                        e -> ((CardException) e).remedy().contains("Left out: 1 named pipe."),
                        "says what was left out");
    }

    @Test
    void anEmptyNameIsNotTheCurrentFolder() {
        for (String empty : List.of("", " ")) {
            assertThatThrownBy(() -> names(false, empty))
                    .isInstanceOf(CardException.class)
                    .hasMessageContaining("the name of a card is empty");
        }
    }

    @Test
    void aPatternThatFitsNothingIsWrongUsage() {
        assertThatThrownBy(() -> names(false, folder.resolve("*.iso").toString()))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("no file fits")
                .matches(e -> ((CardException) e).kind() == CardException.Kind.USAGE);
        assertThatThrownBy(() -> names(false, folder.resolve("*[.img").toString()))
                .isInstanceOf(CardException.class);
    }

    @Test
    void aCardNamedTwiceComesOnceWhereItWasNamedFirst() throws CardException, IOException {
        Files.createSymbolicLink(folder.resolve("link"), folder.resolve("b.img"));
        Files.createLink(folder.resolve("hard.img"), folder.resolve("b.img"));

        assertThat(names(
                        false,
                        folder.resolve("d.bin").toString(),
                        folder.resolve("link").toString(),
                        folder.resolve("hard.img").toString(),
                        folder.resolve("../" + folder.getFileName() + "/d.bin").toString(),
                        folder.toString()))
                .containsExactly("d.bin", "link", "a.IMG", "c.raw", "x[1].img");
    }

    @Test
    void whatIsNotThereAndFoldersWithoutImagesAreLeftToWhoeverOpensThem() throws CardException, IOException {
        Path empty = Files.createDirectory(folder.resolve("empty"));
        Path mounted = Files.createDirectory(folder.resolve("boot"));
        Files.createFile(mounted.resolve("CONFIG.TXT"));
        Files.createFile(mounted.resolve("recovery.bin"));

        assertThat(names(false, "nowhere.img", empty.toString(), mounted.toString()))
                .containsExactly("nowhere.img", "empty", "boot");
    }

    @Test
    void whatIsPackedIsKnownToBeUnchangeableByItsNameAlone() throws CardException, IOException {
        CardNames.refuseToChange(folder.resolve("b.img"));

        assertThatThrownBy(() -> CardNames.refuseToChange(folder.resolve("e.img.xz")))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("packed image")
                .matches(e -> ((CardException) e)
                        .steps()
                        .contains(new NextStep.UnpackImage(NextStep.UnpackImage.Packing.XZ, "e.img.xz")));
    }

    private static List<String> names(boolean packed, String... given) throws CardException, IOException {
        return new CardNames(packed)
                .expand(List.of(given)).cards().stream()
                        .map(card -> card.getFileName().toString())
                        .toList();
    }
}
