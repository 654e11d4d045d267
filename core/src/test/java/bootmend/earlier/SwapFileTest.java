package bootmend.earlier;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.tukaani.xz.XZInputStream;

/** Swap files that a vi-like editor left, version 9.0 on a 64-bit Linux, its process ended in the middle of an edit. */
class SwapFileTest {

    private static final String SHORT =
            "# Board of the lab\n[all]\narm_freq=2150\ngpu_freq=700\nover_voltage=4\ndtparam=audio=on\n";

    private static byte[] file(String name) throws IOException {
        try (InputStream packed = SwapFileTest.class.getResourceAsStream(name + ".swp.xz");
                XZInputStream in = new XZInputStream(packed)) {
            return in.readAllBytes();
        }
    }

    @Test
    void readsWhatWasBeingEdited() throws IOException {
        assertThat(SwapFile.text(file("short")))
                .hasValueSatisfying(text -> assertThat(text).asString().isEqualTo(SHORT));
    }

    @Test
    void readsATextOfSeveralBlocksInItsOrder() throws IOException {
        StringBuilder expected = new StringBuilder("# Board of the lab\n[all]\narm_freq=2150\ngpu_freq=700\n");
        for (int i = 0; i < 200; i++) {
            expected.append("# note ").append(i).append(": cooler and supply as on the bench sheet\n");
        }
        expected.append("over_voltage=6\n");

        assertThat(SwapFile.text(file("long")))
                .hasValueSatisfying(text -> assertThat(text).asString().isEqualTo(expected.toString()));
    }

    @Test
    void isFoundOnACardWithItsTextAlone() throws Exception {
        EarlierCard card = EarlierCard.of(files ->
                files.file("config.txt", EarlierCard.bytes("arm_freq=2000\n")).file(".config.txt.swp", swap()));

        assertThat(card.search()).singleElement().satisfies(version -> {
            assertThat(EarlierCard.text(version)).isEqualTo(SHORT);
            assertThat(version.places()).containsExactly(new Place.Swap(".config.txt.swp"));
        });
    }

    private static byte[] swap() {
        try {
            return file("short");
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void aDamagedOneGivesNothingOrTextAndNeverFails() throws IOException {
        byte[] whole = file("short");
        Random random = new Random(20261201);
        for (int i = 0; i < 20_000; i++) {
            byte[] damaged = Arrays.copyOf(whole, random.nextInt(4) == 0 ? random.nextInt(whole.length) : whole.length);
            for (int k = 0; k < 3 && damaged.length > 0; k++) {
                int at = random.nextInt(3) * 4096 + random.nextInt(40);
                if (at < damaged.length) {
                    damaged[at] = (byte) random.nextInt();
                }
            }
            SwapFile.text(damaged);
        }
    }
}
