package bootmend.partition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.device.RecordingDevice;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.GptBuilder;
import bootmend.fixtures.MbrBuilder;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Chains of logical partitions, and volumes whose table is gone. */
class LostAndLogicalTest {

    private static final long SIZE = 128L << 20;

    @ParameterizedTest
    @CsvSource({"63", "2048", "8192", "16384", "16128"})
    void aVolumeWhoseTableIsGoneIsFoundAndNeverWritten(long start) throws CardException, IOException {
        FatSpec spec = FatSpec.fat32(66000).build();
        SparseDisk disk = new SparseDisk(SIZE, 512);
        new FatBuilder(spec).writeTo(disk, start * 512);
        for (boolean bootSectorToo : new boolean[] {false, true}) {
            if (bootSectorToo) {
                disk.patch(start * 512, new byte[512]);
            }
            PartitionTable table = PartitionTableReader.read(disk);

            assertThat(table.isSearched()).isTrue();
            assertThat(table.warnings()).anyMatch(warning -> warning.contains("found by search"));
            assertThat(table.partitions()).singleElement().satisfies(volume -> {
                assertThat(volume.start()).isEqualTo(start * 512);
                assertThat(volume.sectors()).isEqualTo(spec.totalSectors());
                assertThatThrownBy(() -> new BootChoice(volume, "").refuseToChangeWhatWasSearched())
                        .isInstanceOf(CardException.class)
                        .hasMessageContaining("found by search at byte " + start * 512);
            });
            Partition named = PartitionTableReader.volumeAt(disk, start * 512)
                    .partitions()
                    .get(0);
            assertThat(named.origin()).isEqualTo(Partition.Origin.NAMED);
            new BootChoice(named, "").refuseToChangeWhatWasSearched();
        }
    }

    @Test
    void anEmptyTableIsNoTable() throws CardException, IOException {
        SparseDisk disk = new MbrBuilder(SIZE, 512).build();
        new FatBuilder(FatSpec.fat16(5000).build()).writeTo(disk, 8192 * 512);

        assertThat(PartitionTableReader.read(disk).isSearched()).isTrue();
    }

    @Test
    void aSearchIsBounded() {
        RecordingDevice disk = new RecordingDevice(new SparseDisk(1L << 40, 512));

        assertThatThrownBy(() -> PartitionTableReader.read(disk)).isInstanceOf(CardException.class);
        assertThat(disk.reads()).hasSizeLessThan(6000);
    }

    @ParameterizedTest
    @CsvSource({"-512", "0", "100", "1048576", "9223372036854775296"})
    void aPlaceWithoutAVolume(long offset) {
        assertThatThrownBy(() -> PartitionTableReader.volumeAt(new SparseDisk(SIZE, 512), offset))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("no FAT volume begins at byte");
    }

    /** Three logical partitions; then the last table leads back to the first, then out of the card's end. */
    @Test
    void aChainIsFollowedToItsEndAndNeverInACircle() throws CardException, IOException {
        SparseDisk disk = new MbrBuilder(SIZE, 512)
                .extended(0x0F, 2048, 100000, 0x0C, 2048)
                .build();
        link(disk, 2048, 2048, 8000, 20000);
        link(disk, 22048, 2048, 8000, 40000);
        link(disk, 42048, 2048, 8000, 0);
        PartitionTable good = PartitionTableReader.read(disk);
        assertThat(good.partitions()).extracting(Partition::number).containsExactly(5, 6, 7);
        assertThat(good.partitions()).extracting(Partition::firstSector).containsExactly(4096L, 24096L, 44096L);
        assertThat(good.warnings()).isEmpty();

        link(disk, 42048, 2048, 8000, 20000);
        PartitionTable circle = PartitionTableReader.read(disk);
        assertThat(circle.partitions()).hasSize(3);
        assertThat(circle.warnings()).anyMatch(warning -> warning.contains("leads back to itself"));

        link(disk, 42048, 2048, 8000, 99_999_999);
        assertThat(PartitionTableReader.read(disk).warnings()).anyMatch(warning -> warning.contains("leads out of"));

        link(disk, 42048, 2048, 90000, 0);
        assertThat(PartitionTableReader.read(disk).warnings()).anyMatch(warning -> warning.contains("reaches out of"));
    }

    @Test
    void aDamagedBackupOfAGptIsNoticed() throws CardException, IOException {
        SparseDisk disk = new GptBuilder(SIZE, 512)
                .partition(GptBuilder.BASIC_DATA, 2048, 9000, "boot")
                .build();
        PartitionTable table = PartitionTableReader.read(disk);
        assertThat(PartitionTableReader.lookAtBackup(disk, table)).isEmpty();

        disk.patch(SIZE - 512 + 16, new byte[4]);
        assertThat(PartitionTableReader.lookAtBackup(disk, table))
                .singleElement()
                .asString()
                .contains("backup");
    }

    @Test
    void aHybridTable() throws CardException, IOException {
        SparseDisk disk = new GptBuilder(SIZE, 512)
                .partition(GptBuilder.BASIC_DATA, 2048, 9000, "boot")
                .build();
        disk.patch(462, entry(0x0C, 2048, 9000));
        assertThat(PartitionTableReader.read(disk).hybrid()).isTrue();
        assertThat(PartitionTableReader.read(disk).warnings()).isEmpty();

        disk.patch(462, entry(0x0C, 4096, 9000));
        assertThat(PartitionTableReader.read(disk).warnings())
                .singleElement()
                .asString()
                .contains("does not know");
    }

    private static void link(SparseDisk disk, long table, long gap, long sectors, long next) {
        disk.patch(table * 512 + 446, entry(0x0C, gap, sectors));
        disk.patch(table * 512 + 462, next == 0 ? new byte[16] : entry(0x05, next, 20000));
        disk.patch(table * 512 + 510, (byte) 0x55, (byte) 0xAA);
    }

    private static byte[] entry(int type, long start, long sectors) {
        ByteBuffer entry = ByteBuffer.allocate(16).order(ByteOrder.LITTLE_ENDIAN);
        return entry.put(4, (byte) type)
                .putInt(8, (int) start)
                .putInt(12, (int) sectors)
                .array();
    }
}
