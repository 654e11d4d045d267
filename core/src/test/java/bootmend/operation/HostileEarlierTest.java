package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.StepNames;
import bootmend.device.CardOpener;
import bootmend.device.CardSource;
import bootmend.device.PartitionWindow;
import bootmend.earlier.SearchProgress;
import bootmend.fixtures.SparseDisk;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.tuning.TuningTables;
import bootmend.view.EarlierJob;
import bootmend.view.EarlierView;
import bootmend.workplace.Workplace;
import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Damaged cards with anything at all in their free clusters: a search ends with an answer, or an error with its own words. */
class HostileEarlierTest {

    private static final int CASES = 160;
    private static final CardRequest CARD = CardRequest.of(Path.of("/cards/hostile.img"));
    private static final List<String> PIECES = List.of(
            "arm_freq=2000\n",
            "[pi4]\n",
            "[",
            "=",
            "\0",
            "\u00ff\u00fe",
            "\r",
            "# " + "x".repeat(600) + "\n",
            "over_voltage=6",
            "include config.txt\n",
            "b0\0\0\0\0\0\0\0\0\0\0\0\u0010\0\0");

    @Test
    void everySearchEnds() {
        TuningTables tables = TuningTables.load();
        List<HostileCards.Base> bases = HostileCards.bases();
        long found = IntStream.range(0, CASES)
                .parallel()
                .filter(seed -> search(bases.get(seed % bases.size()), seed, tables))
                .count();

        assertThat(found).as("something is found on some").isBetween(CASES / 10L, (long) CASES);
    }

    private static boolean search(HostileCards.Base base, int seed, TuningTables tables) {
        SparseDisk card = Mutation.of(base.disk(), base.regions(), seed);
        Random random = new Random(seed);
        for (int i = 0; i < 40; i++) {
            long sector = random.nextLong(card.getSize() / 512 - 8);
            card.patch(sector * 512, text(random));
        }
        CardOpener opener = (path, forChanging) -> CardSource.of(path, new PartitionWindow(card, 0, card.getSize()));
        try (FileSystem host = Jimfs.newFileSystem(Configuration.unix())) {
            Workplace workplace = new Workplace(host.getPath("/home"), Clock.systemUTC(), opener, tables);
            EarlierView view = new EarlierJob(workplace).run(CARD, BoardRequest.none(), SearchProgress.TO_THE_END);
            return !view.versions().isEmpty();
        } catch (CardException e) {
            assertThat(new StepNames().remedy(e)).isNotBlank();
            return false;
        } catch (Exception | Error e) {
            throw new AssertionError("seed " + seed, e);
        }
    }

    private static byte[] text(Random random) {
        StringBuilder text = new StringBuilder();
        while (text.length() < 3000 && random.nextInt(60) > 0) {
            text.append(PIECES.get(random.nextInt(3) == 0 ? random.nextInt(PIECES.size()) : 0));
        }
        return text.toString().getBytes(StandardCharsets.ISO_8859_1);
    }
}
