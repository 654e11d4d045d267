package bootmend.cli;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.cli.outcome.ExitCode;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a card had before, by whole commands on the packaged jar. */
class EarlierIT {

    @TempDir
    private Path folder;

    private Bootmend bootmend;
    private Path card;

    @BeforeEach
    void prepare() throws Exception {
        bootmend = new Bootmend(folder);
        card = TestCards.tuned(folder);
        assertThat(bootmend.run("reset", "--yes", card).code()).isZero();
    }

    @Test
    void theVersionFromBeforeAResetIsListedAndGoesBack() throws Exception {
        Bootmend.Result list = bootmend.run("earlier", card);

        assertThat(list.code()).as(list.err()).isZero();
        assertThat(list.out())
                .contains("1.  the one before now: whole, ")
                .contains("arm_freq=2100 (now not set)")
                .contains("certain, by the undo records")
                .contains("--to-earlier 1");

        Bootmend.Result back = bootmend.run("reset", "--yes", "--to-earlier", "1", card);

        assertThat(back.code()).as(back.err()).isZero();
        assertThat(back.out()).contains("after   arm_freq=2100", "The card is safe to take out.");
        assertThat(bootmend.run("show", card).out()).contains("2 active tuning lines");
    }

    @Test
    void theDocumentNamesEachVersionAndItsTextIsPrinted() throws Exception {
        JsonNode found = new ObjectMapper()
                .readTree(bootmend.run("earlier", "--json", card).out());

        JsonNode version = found.at("/versions/0");
        assertThat(version.at("/n").asInt()).isEqualTo(1);
        assertThat(version.at("/whole").asBoolean()).isTrue();
        assertThat(version.at("/order").asText()).isEqualTo("certain");
        assertThat(version.at("/settings/arm_freq").asText()).isEqualTo("2100");
        String hash = version.at("/sha256").asText();
        assertThat(bootmend.run("earlier", "--text", hash.substring(0, 8), card).out())
                .contains("arm_freq=2100\n", "over_voltage=6\n");
        Bootmend.Result whole = bootmend.run("reset", "--yes", "--whole", "--to-earlier", hash.substring(0, 8), card);
        assertThat(whole.code()).as(whole.err()).isZero();
    }

    @Test
    void whatDoesNotGoTogetherIsSaid() throws Exception {
        assertThat(bootmend.run("reset", "--yes", "--whole", card).code()).isEqualTo(ExitCode.USAGE);
        assertThat(bootmend.run("reset", "--yes", "--to-earlier", "1", "--remove", card)
                        .code())
                .isEqualTo(ExitCode.USAGE);
        Bootmend.Result none = bootmend.run("reset", "--yes", "--to-earlier", "99", card);
        assertThat(none.code()).isEqualTo(ExitCode.USAGE);
        assertThat(none.err()).contains("bootmend earlier");
    }
}
