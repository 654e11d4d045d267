package bootmend.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Profiles as files: read back as written, edited by hand, and nowhere but in their folder. */
class ProfileStoreTest {

    private final Path folder = Jimfs.newFileSystem(Configuration.unix()).getPath("/data/profiles");
    private final ProfileStore store = new ProfileStore(folder);

    @Test
    void aProfileReadsBackAsItWasSaved() throws Exception {
        Profile profile = cart(List.of(new Evidence("run of 3 February", true, 52, true, false)));
        store.save(profile, false);
        assertThat(store.load("cart-3")).isEqualTo(profile);
        assertThat(store.names()).containsExactly("cart-3");
    }

    @Test
    void theFileIsPlainToReadAndEdit() throws Exception {
        Path file = store.save(cart(List.of(new Evidence("run", true, 45, true, false))), false);
        assertThat(Files.readString(file)).isEqualTo("""
                # A bootmend profile: tuning settings for one board, with the trials that back them.
                # Higher clocks and voltages heat a board and can damage it. Its maker's limits and local rules come first.
                schema: 1
                name: cart-3
                board: pi4
                settings:
                  arm_freq: 1750
                  over_voltage: 2
                  temp_limit: 0x50
                cooling: heat sink
                supply: "5.1 V, 3 A"
                evidence:
                  run:
                    holds: true
                    minutes: 45
                    full_load: true
                    throttled: false
                notes: "on the cart: left"
                """);
    }

    @Test
    void anExistingProfileIsReplacedOnlyWhenAsked() throws Exception {
        store.save(cart(List.of()), false);
        assertThatThrownBy(() -> store.save(cart(List.of()), false)).isInstanceOf(CardException.class);
        store.save(cart(List.of(new Evidence("run", true, 45, true, false))), true);
        assertThat(store.load("cart-3").isKnownGood()).isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                ".",
                "..",
                "../x",
                "a/b",
                "a\\b",
                "/etc/x",
                ".hidden",
                "Cart",
                "con",
                "nul.yaml",
                "a b",
                "caf\u00e9",
                "x\u0000",
                "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa"
            })
    void aNameThatCouldLeadElsewhereIsRefused(String name) {
        assertThatThrownBy(() -> store.load(name))
                .isInstanceOfSatisfying(
                        CardException.class, e -> assertThat(e.kind()).isEqualTo(CardException.Kind.USAGE));
        assertThatThrownBy(() -> store.delete(name)).isInstanceOf(CardException.class);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "[",
                "schema: 1",
                "schema: 2\nname: x\nboard: pi4\nsettings: {}",
                "schema: 1\nname: x\nboard: pi4\nsettings: [1]",
                "schema: 1\nname: x\nboard: pi4\nsettings: {a: {b: c}}",
                "schema: 1\nname: x\nboard: pi4\nsettings: {}\nextra: 1",
                "schema: 1\nname: x\nboard: pi4\nsettings: {arm_freq: 1}\nevidence: {t: {holds: maybe}}",
                "schema: 1\nname: x\nboard: pi4\nsettings: {arm_freq: fast}",
                "schema: 1\nname: x\nboard: pi4\nsettings: {}",
                "- a\n- b",
                "a: &a [*a, *a]",
                "\u0000"
            })
    void aFileThatIsNoProfileIsAnErrorThatNamesIt(String text) throws IOException {
        Files.createDirectories(folder);
        Files.write(folder.resolve("bad.yaml"), text.getBytes(StandardCharsets.UTF_8));
        assertThatThrownBy(() -> store.load("bad")).isInstanceOfSatisfying(CardException.class, e -> {
            assertThat(e.kind()).isEqualTo(CardException.Kind.UNREADABLE);
            assertThat(e).hasMessageContaining("bad.yaml");
        });
    }

    @Test
    void onlyALongRunUnderFullLoadWithoutThrottlingProves() {
        assertThat(new Evidence("t", true, 45, true, false).passes()).isTrue();
        assertThat(new Evidence("t", true, 44, true, false).passes()).isFalse();
        assertThat(new Evidence("t", true, 45, false, false).passes()).isFalse();
        assertThat(new Evidence("t", true, 45, true, true).passes()).isFalse();
        assertThat(new Evidence("t", false, 45, true, false).passes()).isFalse();
    }

    private static Profile cart(List<Evidence> evidence) {
        Map<String, String> settings = new LinkedHashMap<>();
        settings.put("arm_freq", "1750");
        settings.put("over_voltage", "2");
        settings.put("temp_limit", "0x50");
        return new Profile("cart-3", "pi4", settings, "heat sink", "5.1 V, 3 A", evidence, "on the cart: left");
    }
}
