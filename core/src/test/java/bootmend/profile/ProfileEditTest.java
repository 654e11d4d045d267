package bootmend.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.config.ConfigDocument;
import bootmend.config.IncludeSource;
import bootmend.tuning.TuningTables;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Putting a profile's settings into config files, worked out by hand. */
class ProfileEditTest {

    private static final TuningTables TABLES = TuningTables.load();
    private static final Map<String, String> CART = settings("arm_freq", "1750", "over_voltage", "2");

    @Test
    void aStockFileGetsTheBoardsSectionAndAllAfterIt() throws Exception {
        assertThat(applied("dtparam=spi=on\n", CART))
                .isEqualTo("dtparam=spi=on\n[pi4]\narm_freq=1750\nover_voltage=2\n[all]\n");
    }

    @Test
    void aParameterIsSetAndTakenOutWithoutTheOthersOnItsLine() throws Exception {
        String before = "dtparam=audio=on,sd_overclock=100\ndtparam=spi=on,sdio_overclock=60\n";
        Map<String, String> slower = settings("dtparam=sd_overclock", "80");
        String once = applied(before, slower);
        assertThat(once).isEqualTo("dtparam=audio=on,sd_overclock=80\ndtparam=spi=on\n");
        assertThat(applied(once, slower)).isEqualTo(once);
        assertThat(applied("gpu_mem=64\n", slower)).isEqualTo("gpu_mem=64\n[pi4]\ndtparam=sd_overclock=80\n[all]\n");
    }

    @Test
    void doingItTwiceChangesNothing() throws Exception {
        String once = applied("arm_freq=2000\n[cm4]\narm_freq=1600\n", CART);
        assertThat(applied(once, CART)).isEqualTo(once);
    }

    @Test
    void aLineIsSetWhereItStands() throws Exception {
        assertThat(applied("[all]\r\narm_freq=2000\r\nover_voltage=6\r\n", CART))
                .isEqualTo("[all]\r\narm_freq=1750\r\nover_voltage=2\r\n");
    }

    @Test
    void ofTwoLinesTheLastIsSetAndTheOtherCommentedOut() throws Exception {
        assertThat(applied("arm_freq=1900\narm_freq=2000\nover_voltage=2\n", CART))
                .isEqualTo("#arm_freq=1900\narm_freq=1750\nover_voltage=2\n");
    }

    @Test
    void whatTheProfileDoesNotHaveIsCommentedOut() throws Exception {
        assertThat(applied("gpu_freq=700\narm_freq=1750\nforce_turbo=1\nover_voltage=2\n", CART))
                .isEqualTo("#gpu_freq=700\narm_freq=1750\n#force_turbo=1\nover_voltage=2\n");
    }

    @Test
    void linesOfOtherBoardsStay() throws Exception {
        assertThat(applied("[pi5]\narm_freq=2600\n[none]\narm_freq=9\n[all]\n", CART))
                .isEqualTo("[pi5]\narm_freq=2600\n[none]\narm_freq=9\n[all]\n"
                        + "[pi4]\narm_freq=1750\nover_voltage=2\n[all]\n");
    }

    @Test
    void aMissingSettingJoinsTheBoardsOwnSection() throws Exception {
        assertThat(applied("[pi4]\narm_freq=1750\n[all]\n", CART))
                .isEqualTo("[pi4]\narm_freq=1750\nover_voltage=2\n[all]\n");
    }

    @Test
    void aLineThatHangsOnAPinIsCommentedOut() throws Exception {
        assertThat(applied("[gpio4=1]\narm_freq=1800\n[all]\narm_freq=1750\nover_voltage=2\n", CART))
                .isEqualTo("[gpio4=1]\n#arm_freq=1800\n[all]\narm_freq=1750\nover_voltage=2\n");
    }

    @Test
    void aLineThatIsOnlyShownStaysUnlessTheProfileHasIt() throws Exception {
        assertThat(applied("arm_boost=1\n", settings("arm_freq", "1750"))).startsWith("arm_boost=1\n");
        assertThat(applied("arm_boost=1\n", settings("arm_boost", "0"))).isEqualTo("arm_boost=0\n");
    }

    @Test
    void anIncludedFileIsChangedToo() throws Exception {
        IncludeSource includes = name -> name.equals("more.txt")
                ? Optional.of("over_voltage=6\ngpu_freq=600\n".getBytes(StandardCharsets.US_ASCII))
                : Optional.empty();
        Map<String, ConfigDocument> files = edit().apply("config.txt", document("include more.txt\n"), includes, CART);
        assertThat(text(files.get("more.txt"))).isEqualTo("over_voltage=2\n#gpu_freq=600\n");
        assertThat(text(files.get("config.txt"))).isEqualTo("include more.txt\n[pi4]\narm_freq=1750\n[all]\n");
    }

    @Test
    void aFileThatIsIncludedTwiceByTwoNamesIsChangedOnce() throws Exception {
        IncludeSource includes = name -> name.equalsIgnoreCase("more.txt")
                ? Optional.of("over_voltage=6\n".getBytes(StandardCharsets.US_ASCII))
                : Optional.empty();
        Map<String, ConfigDocument> files =
                edit().apply("config.txt", document("include more.txt\ninclude MORE.TXT\n"), includes, CART);
        assertThat(files).containsOnlyKeys("config.txt", "more.txt");
        assertThat(text(files.get("more.txt"))).isEqualTo("over_voltage=2\n");
    }

    @Test
    void anUnknownSectionAtTheEndIsNotTrusted() {
        assertThatThrownBy(() -> applied("[nonsense]\ndtparam=spi=on\n", settings("arm_freq", "1750")))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("would not be sure");
    }

    private static ProfileEdit edit() {
        return new ProfileEdit(
                TABLES, TABLES.boards().find("pi4").orElseThrow(), name -> name.toLowerCase(Locale.ROOT));
    }

    private static String applied(String before, Map<String, String> settings) throws CardException {
        return text(edit().apply("config.txt", document(before), IncludeSource.none(), settings)
                .get("config.txt"));
    }

    private static ConfigDocument document(String text) {
        return ConfigDocument.parse(text.getBytes(StandardCharsets.US_ASCII));
    }

    private static String text(ConfigDocument document) {
        return new String(document.toBytes(), StandardCharsets.US_ASCII);
    }

    private static Map<String, String> settings(String... pairs) {
        Map<String, String> settings = new LinkedHashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            settings.put(pairs[i], pairs[i + 1]);
        }
        return settings;
    }
}
