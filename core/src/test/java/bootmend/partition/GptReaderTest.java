package bootmend.partition;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.fixtures.GptBuilder;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.util.UUID;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Source: UEFI Specification 2.10, section 5.3 (header in block 1, its alternate in the last block, CRC32 of header and
 * entries), appendix A (byte order of GUIDs).
 */
class GptReaderTest {

    private static final long SIZE = 8 << 20;
    private static final UUID ROOT_FILES = UUID.fromString("0fc63daf-8483-4772-8e79-3d69d8477de4");

    @ParameterizedTest
    @ValueSource(ints = {512, 4096})
    void goodTable(int sector) throws CardException, IOException {
        PartitionTable table = PartitionTableReader.read(disk(sector));

        assertGood(table, sector);
        assertThat(table.warnings()).isEmpty();
    }

    @Test
    void imageOfACardWithLargeSectors() throws CardException, IOException {
        SparseDisk image = new SparseDisk(SIZE, 512);
        image.patch(0, disk(4096).toBytes(0, (int) SIZE));

        assertGood(PartitionTableReader.read(image), 4096);
    }

    /** Signature, header CRC, own place, entries CRC, and with 552 the first entry behind the header. */
    @ParameterizedTest
    @CsvSource({"512, 0", "512, 16", "512, 24", "512, 88", "512, 552", "4096, 0", "4096, 16", "4096, 88"})
    void backupStandsInForADamagedFirstCopy(int sector, int inHeader) throws CardException, IOException {
        SparseDisk disk = disk(sector);
        flip(disk, sector + inHeader);

        PartitionTable table = PartitionTableReader.read(disk);

        assertGood(table, sector);
        assertThat(table.warnings()).singleElement().asString().contains("backup at the card's end");
    }

    @Test
    void firstSectorsWipedOutLeaveTheBackup() throws CardException, IOException {
        SparseDisk disk = disk(512);
        disk.patch(0, new byte[34 * 512]);

        PartitionTable table = PartitionTableReader.read(disk);

        assertGood(table, 512);
        assertThat(table.warnings()).hasSize(2);
    }

    @Test
    void bothCopiesDamagedIsSaid() throws CardException, IOException {
        SparseDisk disk = disk(512);
        flip(disk, 512 + 16);
        flip(disk, SIZE - 512 + 16);

        PartitionTable table = PartitionTableReader.read(disk);

        assertThat(table.partitions()).isEmpty();
        assertThat(table.warnings()).singleElement().asString().contains("neither GPT header is readable");
    }

    /** One byte of the table changed anywhere: read from the other copy, or refused, never another place. */
    @Property(tries = 300)
    void noByteOfTheTableGoesUnchecked(@ForAll @IntRange(min = 512, max = 34 * 512 - 1) int at)
            throws CardException, IOException {
        SparseDisk disk = disk(512);
        flip(disk, at);

        assertGood(PartitionTableReader.read(disk), 512);
    }

    private static SparseDisk disk(int sector) {
        return new GptBuilder(SIZE, sector)
                .partition(ROOT_FILES, 100, 50, "system")
                .partition(GptBuilder.EFI_SYSTEM, 200, 300, "boot")
                .partition(GptBuilder.BASIC_DATA, 600, 400, "data")
                .build();
    }

    private static void assertGood(PartitionTable table, int sector) {
        assertThat(table.kind()).isEqualTo(PartitionTable.Kind.GPT);
        assertThat(table.diskGuid()).contains(UUID.fromString("5c01ab07-0000-4000-8000-000000000000"));
        assertThat(table.partitions()).extracting(Partition::name).containsExactly("system", "boot", "data");
        assertThat(table.partitions().get(1).guid()).contains(UUID.fromString("5c01ab07-0000-4000-8000-000000000002"));
        assertThat(table.partitions())
                .usingRecursiveFieldByFieldElementComparatorIgnoringFields("guid", "name")
                .containsExactly(
                        new Partition(1, 100, 50, sector, ROOT_FILES.toString(), false),
                        new Partition(2, 200, 300, sector, "c12a7328-f81f-11d2-ba4b-00a0c93ec93b", true),
                        new Partition(3, 600, 400, sector, "ebd0a0a2-b9e5-4433-87c0-68b6b72699c7", true));
    }

    private static void flip(SparseDisk disk, long at) {
        disk.patch(at, (byte) (disk.toBytes(at, 1)[0] ^ 0x40));
    }
}
