package bootmend.view;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.device.DeviceEvent;
import bootmend.fixtures.DemoCard;
import bootmend.fixtures.DemoCards;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.operation.ChangeRequest;
import bootmend.workplace.MemoryCard;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Speed is counted, not timed: reads of a look, writes of a change. */
class AccessCountTest {

    private static final long START = 8192 * 512;

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2})
    void aLookAtA256MebibyteCardReadsLittle(int number) throws CardException, IOException {
        MemoryCard card = demo(number);

        CardView view = card.show();

        assertThat(view.partition().fatType()).isEqualTo("FAT32");
        assertThat(view.partition().bytes()).isEqualTo(256 << 20);
        assertThat(view.config()).isPresent();
        List<DeviceEvent.Read> reads = card.lastJob().reads();
        assertThat(reads).hasSizeLessThanOrEqualTo(16);
        assertThat(card.lastJob().bytesRead()).isLessThanOrEqualTo(32 << 10);
    }

    @Test
    void aResetOfTheDemoCardTouchesNothingElse() throws CardException, IOException {
        MemoryCard card = demo(0);
        SparseDisk before = card.disk.copy();

        card.reset(ChangeRequest.ToStock.PLAIN);

        int data = (card.read("config.txt").length + 511) / 512;
        assertThat(card.lastJob().writes()).hasSizeLessThanOrEqualTo(data + 8);
        assertThat(card.disk.differingSectors(before)).hasSizeLessThanOrEqualTo(data + 8);
        card.undo();
        assertThat(card.disk.differingSectors(before)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(ints = {3000, 5000, 66000})
    void aResetOfOneLineWritesAtMostEightSectorsMoreThanTheData(int clusters) throws CardException, IOException {
        FatSpec.Builder kind = clusters < 4085
                ? FatSpec.fat12(clusters)
                : clusters < 65525 ? FatSpec.fat16(clusters) : FatSpec.fat32(clusters);
        MemoryCard card =
                MemoryCard.withConfig(kind.sectorsPerCluster(4).build(), "# note\n".repeat(100) + "arm_freq=2000\n");

        card.reset(ChangeRequest.ToStock.PLAIN);

        int data = (card.read("config.txt").length + 511) / 512;
        assertThat(card.lastJob().writes())
                .hasSizeBetween(data + 1, data + 8)
                .allMatch(write -> write.bytes().length == 512);
    }

    private static MemoryCard demo(int number) throws IOException {
        DemoCard card = DemoCards.all().get(number);
        return new MemoryCard(DemoCards.build(card), START, null);
    }
}
