package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.config.SavedText;
import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.workplace.MemoryCard;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;

/** Laws of reset and undo for config files of any bytes, on real cards in memory. */
class ResetPropertyTest {

    @Property(tries = 60)
    void resetTwiceEqualsResetOnce(@ForAll("configs") byte[] config, @ForAll boolean remove)
            throws CardException, IOException {
        assumeLinesABoardReads(config);
        MemoryCard card = card(config);
        ChangeRequest.ToStock request = new ChangeRequest.ToStock(remove, Set.of("arm_boost"));

        card.reset(request);
        SparseDisk once = card.disk.copy();
        boolean again = card.reset(request);

        assertThat(again).isFalse();
        assertThat(card.disk.differingSectors(once)).isEmpty();
    }

    @Property(tries = 60)
    void resetThenUndoGivesTheSameDisk(@ForAll("configs") byte[] config, @ForAll boolean remove)
            throws CardException, IOException {
        assumeLinesABoardReads(config);
        MemoryCard card = card(config);
        SparseDisk before = card.disk.copy();

        if (card.reset(new ChangeRequest.ToStock(remove, Set.of()))) {
            assertThat(card.disk.differingSectors(before)).isNotEmpty();
            assertThat(card.undo()).isTrue();
        }

        assertThat(card.read("config.txt")).isEqualTo(config);
        assertThat(card.disk.differingSectors(before)).isEmpty();
    }

    /** A file saved as UTF-16 has no line that could be reset, and is refused. */
    private static void assumeLinesABoardReads(byte[] config) {
        Assume.that(!SavedText.of(config).problems().contains(SavedText.Problem.UTF_16));
    }

    @Provide
    Arbitrary<byte[]> configs() {
        Arbitrary<byte[]> known = Arbitraries.of(
                        "arm_freq=2000",
                        "over_voltage=6",
                        " gpu_freq=500",
                        "#arm_freq=1",
                        "arm_boost=1",
                        "[pi4]",
                        "[none]",
                        "[all]",
                        "include more.txt",
                        "include config.txt",
                        "include CONFIG~1.TXT",
                        "dtparam=spi=on",
                        "\n",
                        "\r\n",
                        "\n\n",
                        "\r",
                        "\0")
                .map(text -> text.getBytes(StandardCharsets.UTF_8));
        Arbitrary<byte[]> noise = Arbitraries.bytes().array(byte[].class).ofMaxSize(30);
        return Arbitraries.frequencyOf(Tuple.of(4, known), Tuple.of(1, noise))
                .list()
                .ofMaxSize(40)
                .map(ResetPropertyTest::join);
    }

    private static byte[] join(List<byte[]> parts) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        parts.forEach(part -> {
            out.writeBytes(part);
            out.write('\n');
        });
        return out.toByteArray();
    }

    private static MemoryCard card(byte[] config) throws IOException {
        return MemoryCard.of(
                FatSpec.fat12(3000).build(),
                builder -> builder.add("", FatItem.file("config.txt", config).alias("CONFIG~1.TXT"))
                        .file(
                                "more.txt",
                                MemoryCard.ascii("over_voltage=2\n[cm4]\ninclude config.txt\nforce_turbo=1\n")));
    }
}
