package bootmend.cli;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.cli.outcome.ExitCode;
import bootmend.fixtures.DamagedCards;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Repair by whole commands on the packaged jar. */
class RepairIT {

    @TempDir
    private Path folder;

    private Bootmend bootmend;

    @BeforeEach
    void prepare() {
        bootmend = new Bootmend(folder);
    }

    @Test
    void explainsRepairsAndUndoes() throws Exception {
        Path card = damaged("config-txt-txt");
        byte[] before = Files.readAllBytes(card);
        Bootmend.Result show = bootmend.run("show", card);
        assertThat(show.code()).isEqualTo(ExitCode.UNREADABLE);
        assertThat(show.err()).contains("a file named \"config.txt.txt\"", "bootmend repair");

        Bootmend.Result repair = bootmend.run("repair", "--yes", card);

        assertThat(repair.code()).isZero();
        assertThat(repair.out())
                .contains("config.txt.txt: A board looks for config.txt and does not find it.")
                .contains("config-misnamed, repaired by this repair")
                .contains("To write: 1 sector (1 folder) in 1 step.")
                .contains("The card is safe to take out.");
        assertThat(bootmend.run("show", card).code()).isZero();
        Bootmend.Result again = bootmend.run("repair", "--yes", card);
        assertThat(again.code()).isZero();
        assertThat(again.out()).contains("A repair finds nothing that is its own to put right.");
        assertThat(bootmend.run("undo", "--yes", card).code()).isZero();
        assertThat(Files.readAllBytes(card)).isEqualTo(before);
    }

    @Test
    void leavesCrossLinkedFilesAloneAndSaysWhatToDo() throws Exception {
        Path card = damaged("cross-linked");
        byte[] before = Files.readAllBytes(card);

        Bootmend.Result repair = bootmend.run("repair", "--yes", "--free-lost", card);

        assertThat(repair.code()).isEqualTo(ExitCode.BLOCKER);
        assertThat(repair.out())
                .contains("It shares clusters with kernel8.img")
                .contains("cross-linked, not repaired")
                .contains("Make an image of the card", "ask someone qualified");
        assertThat(Files.readAllBytes(card)).isEqualTo(before);
    }

    @Test
    void answersWithFindingsAsJsonAndWritesNothingInADryRun() throws Exception {
        Path card = damaged("fat-first-copy-behind");
        byte[] before = Files.readAllBytes(card);

        Bootmend.Result repair = bootmend.run("repair", "--dry-run", "--json", card);

        assertThat(repair.code()).isZero();
        JsonNode document = new ObjectMapper().readTree(repair.out());
        assertThat(document.at("/findings")).hasSize(1);
        assertThat(document.at("/findings/0/id").asText()).isEqualTo("fat-copies-differ");
        assertThat(document.at("/findings/0/where").asText()).isEqualTo("FAT");
        assertThat(document.at("/findings/0/what").asText()).contains("copy 2 is taken");
        assertThat(document.at("/findings/0/repaired").asBoolean()).isTrue();
        assertThat(document.at("/plan/sectorsByKind/FAT").asInt()).isPositive();
        assertThat(Files.readAllBytes(card)).isEqualTo(before);
        assertThat(bootmend.home()).doesNotExist();
    }

    private Path damaged(String id) throws IOException {
        Path card = folder.resolve(id + ".img");
        DamagedCards.card(id).disk().writeTo(card);
        return card;
    }
}
