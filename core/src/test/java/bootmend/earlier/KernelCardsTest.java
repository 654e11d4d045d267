package bootmend.earlier;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.card.CardEarlier;
import bootmend.card.OpenCard;
import bootmend.fixtures.SparseDisk;
import bootmend.request.CardRequest;
import bootmend.workplace.MemoryWorkplace;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.tukaani.xz.XZInputStream;

/**
 * How much of what a real kernel wrote is found: cards whose config file Linux 6.1 edited in a virtual machine, made once by
 * {@code fixtures/src/kernel/edit-cards.sh}. What stands on each card is counted here by looking for the written texts in
 * its bytes, by no code of the search.
 */
class KernelCardsTest {

    private static final int PIECE = 1 << 20;
    /** Longer than any text that was written. */
    private static final int OVERLAP = 4096;

    private static final byte[] HEAD = KernelCards.bytes("# Board of the lab, edit ");

    /** In each: where edits leave nothing, or in the same cluster, there is nothing to find. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "f32-truncate-10, 9, 0",
        "f32-truncate-10-remount, 9, 0",
        "f32-rename-10, 9, 0",
        "f32-rename-10-remount, 9, 0",
        "f32-inplace-10, 0, 0",
        "f32-truncate-100-between, 99, 0",
        "f32-rename-100-remount, 99, 0",
        "f32-truncate-1000-between, 999, 0",
        "f32-rename-1000-wrap, 559, 0",
        "f32-fragmented-100, 99, 0",
        "f32-backup-10, 9, 0",
        "f16-truncate-10, 9, 0",
        "f16-truncate-10-remount, 0, 0",
        "f16-rename-10, 9, 0",
        "f16-rename-10-remount, 1, 0",
        "f16-inplace-10, 0, 0",
        "f16-truncate-100-between, 99, 0",
        "f16-rename-1000-between, 999, 0",
        "f16-truncate-1000-wrap, 526, 0"
    })
    void everyVersionThatStillStandsIsFoundInTheOrderInWhichItWasWritten(String name, int whole, int parts)
            throws CardException, IOException {
        int edits = Integer.parseInt(name.split("-", -1)[2]);
        IntFunction<String> text = name.contains("fragmented") ? KernelCards::longText : KernelCards::text;
        Map<String, Integer> written =
                IntStream.rangeClosed(1, edits).boxed().collect(Collectors.toMap(text::apply, i -> i));
        SparseDisk card = card(name);

        EarlierVersions found = search(card);

        List<Integer> order = new ArrayList<>();
        List<String> inPart = new ArrayList<>();
        for (EarlierVersion version : found.newestFirst()) {
            String there = new String(version.text(), StandardCharsets.ISO_8859_1);
            if (version.whole()) {
                assertThat(written).containsKey(there);
                order.add(written.get(there));
            } else {
                assertThat(written.keySet()).anyMatch(each -> each.contains(there));
                inPart.add(there);
            }
        }
        assertThat(found.complete()).isTrue();
        assertThat(order).hasSize(whole).doesNotHaveDuplicates().isSortedAccordingTo(Comparator.reverseOrder());
        assertThat(inPart).hasSize(parts);
        if (!name.contains("fragmented")) {
            Set<Integer> standing = standing(card, edits);
            assertThat(standing).contains(edits);
            standing.remove(edits);
            assertThat(order).containsExactlyInAnyOrderElementsOf(standing);
        }
    }

    private static EarlierVersions search(SparseDisk disk) throws CardException, IOException {
        try (MemoryWorkplace bench = new MemoryWorkplace()) {
            bench.insert("/cards/kernel.img", disk);
            try (OpenCard card =
                    OpenCard.open(bench.workplace().opener(), CardRequest.of(Path.of("/cards/kernel.img")), false)) {
                return new CardEarlier(bench.workplace()).of(card, SearchProgress.TO_THE_END);
            }
        }
    }

    static SparseDisk card(String name) throws IOException {
        try (InputStream packed = KernelCardsTest.class.getResourceAsStream(name + ".img.xz");
                XZInputStream in = new XZInputStream(packed)) {
            List<byte[]> pieces = new ArrayList<>();
            long size = 0;
            for (byte[] piece = in.readNBytes(PIECE); piece.length > 0; piece = in.readNBytes(PIECE)) {
                pieces.add(TextBytes.isZero(piece, 0, piece.length) ? new byte[0] : piece);
                size += piece.length;
            }
            SparseDisk disk = new SparseDisk(size, 512);
            for (int i = 0; i < pieces.size(); i++) {
                disk.patch((long) i * PIECE, pieces.get(i));
            }
            return disk;
        }
    }

    /** The edits whose whole text stands somewhere, its clusters side by side. */
    private static Set<Integer> standing(SparseDisk disk, int edits) {
        Set<Integer> standing = new TreeSet<>();
        for (long at = 0; at < disk.getSize(); at += PIECE) {
            byte[] piece = disk.toBytes(at, (int) Math.min(PIECE + OVERLAP, disk.getSize() - at));
            for (int i = 0; i < Math.min(PIECE, piece.length - OVERLAP); i += 512) {
                int number = number(piece, i);
                if (number >= 1 && number <= edits && stands(piece, i, KernelCards.bytes(KernelCards.text(number)))) {
                    standing.add(number);
                }
            }
        }
        return standing;
    }

    private static int number(byte[] piece, int at) {
        for (int i = 0; i < HEAD.length; i++) {
            if (piece[at + i] != HEAD[i]) {
                return 0;
            }
        }
        int number = 0;
        for (int i = at + HEAD.length; piece[i] >= '0' && piece[i] <= '9' && number < 10_000; i++) {
            number = number * 10 + piece[i] - '0';
        }
        return number;
    }

    private static boolean stands(byte[] piece, int at, byte[] text) {
        for (int i = 0; i < text.length; i++) {
            if (piece[at + i] != text[i]) {
                return false;
            }
        }
        return true;
    }
}
