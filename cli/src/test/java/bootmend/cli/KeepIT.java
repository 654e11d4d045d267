package bootmend.cli;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.cli.outcome.ExitCode;
import bootmend.fixtures.ChainCard;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Copies of boot files, and cards that get theirs back, by whole commands on the packaged jar. */
class KeepIT {

    @TempDir
    private Path folder;

    private Bootmend bootmend;
    private Path good;
    private Path broken;

    @BeforeEach
    void prepare() throws Exception {
        bootmend = new Bootmend(folder);
        good = folder.resolve("good.img");
        broken = folder.resolve("broken.img");
        new ChainCard().putAll(ChainCard.everyBoard()).build().writeTo(good);
        new ChainCard()
                .putAll(ChainCard.everyBoard())
                .remove("start4.elf")
                .put("kernel8.img", new byte[0])
                .build()
                .writeTo(broken);
    }

    @Test
    void keptFilesBringACardBack() throws Exception {
        byte[] before = Files.readAllBytes(broken);
        Path kept = folder.resolve("good.zip");
        Bootmend.Result keep = bootmend.run("keep", "--json", good, kept);
        assertThat(keep.code()).as(keep.err()).isZero();
        JsonNode document = new ObjectMapper().readTree(keep.out());
        assertThat(document.at("/files").asInt())
                .isEqualTo(ChainCard.everyBoard().size());
        assertThat(bootmend.run("keep", good, kept).code()).isEqualTo(ExitCode.REFUSED);

        assertThat(bootmend.run("diagnose", "--board", "pi4", broken).code()).isEqualTo(ExitCode.BLOCKER);
        Path first = folder.resolve("first.zip");
        Bootmend.Result repaired =
                bootmend.run("repair", "--yes", broken, "--from", kept, "--board", "pi4", "--before", first);
        assertThat(repaired.code()).as(repaired.err()).isZero();
        assertThat(repaired.out())
                .contains("Kept first:", "kernel8.img is replaced", "start4.elf is new", "Done: boot files from");
        assertThat(bootmend.run("diagnose", "--board", "pi4", broken).code()).isZero();
        assertThat(bootmend.run("compare", broken, good).out()).contains("have the same config file");
        assertThat(bootmend.run("compare", first, good).out()).contains("start4.elf", "missing");

        assertThat(bootmend.run("undo", "--yes", broken).code()).isZero();
        assertThat(Files.readAllBytes(broken)).isEqualTo(before);
    }

    @Test
    void severalCardsGetTheirFilesAndTheirCopiesAtOnce() throws Exception {
        Path second = folder.resolve("second.img");
        Files.copy(broken, second);
        Path copies = folder.resolve("copies");
        Bootmend.Result repaired =
                bootmend.run("repair", "--yes", broken, second, "--from", good, "--board", "pi4", "--before", copies);
        assertThat(repaired.code()).as(repaired.err()).isZero();
        assertThat(repaired.out()).contains("2 cards: 2 changed");
        assertThat(copies.resolve("broken.img.zip")).exists();
        assertThat(copies.resolve("second.img.zip")).exists();
        assertThat(bootmend.run("undo", "--yes", broken, second).out()).contains("2 cards: 2 changed");
    }
}
