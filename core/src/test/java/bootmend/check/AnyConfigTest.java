package bootmend.check;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.finding.Purpose;
import java.nio.charset.StandardCharsets;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Whatever the config file holds, the check ends, and every finding is whole and on a line that is there. */
class AnyConfigTest {

    private static final TestCard STOCK = TestCard.stock();

    @Property(tries = 150)
    void everyFindingIsWhole(@ForAll("configs") byte[] config, @ForAll Purpose purpose) {
        TestCard card = STOCK.onItsBoards().configBytes(config);
        int lines = card.content().read().config().get(0).document().lines().size();
        assertThat(card.check(purpose)).allSatisfy(finding -> {
            assertThat(finding.what()).isNotBlank();
            assertThat(finding.where().line().orElse(1)).isBetween(1, Math.max(1, lines));
        });
    }

    @Provide
    Arbitrary<byte[]> configs() {
        Arbitrary<String> pieces = Arbitraries.of(List.of(
                "arm_freq",
                "over_voltage",
                "force_turbo",
                "kernel",
                "os_prefix",
                "dtoverlay",
                "include config.txt",
                "initramfs ",
                "[pi4]",
                "[gpio4=1]",
                "[",
                "=",
                "\n",
                "\r",
                "\0",
                " ",
                "#",
                ",",
                ":",
                "*",
                "/",
                "..",
                "-9999999999",
                "0x",
                "8",
                "\u00e9",
                "\u202e"));
        return pieces.list().ofMaxSize(60).map(list -> String.join("", list).getBytes(StandardCharsets.UTF_8));
    }
}
