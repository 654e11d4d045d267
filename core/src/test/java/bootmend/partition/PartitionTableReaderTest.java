package bootmend.partition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.StepNames;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.MbrBuilder;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Source of the MBR's layout: UEFI Specification 2.10, section 5.2; of the type bytes: common practice, no source. */
class PartitionTableReaderTest {

    private static final long SIZE = 8 << 20;

    @ParameterizedTest
    @ValueSource(ints = {0x01, 0x04, 0x06, 0x0B, 0x0C, 0x0E, 0xEF})
    void fatTypes(int type) throws CardException, IOException {
        PartitionTable table = PartitionTableReader.read(
                new MbrBuilder(SIZE, 512).partition(type, 2048, 4000).build());

        assertThat(table.kind()).isEqualTo(PartitionTable.Kind.MBR);
        assertThat(table.warnings()).isEmpty();
        assertThat(table.partitions()).singleElement().satisfies(partition -> {
            assertThat(partition.fatType()).isTrue();
            assertThat(partition.number()).isEqualTo(1);
            assertThat(partition.start()).isEqualTo(2048 * 512);
            assertThat(partition.length()).isEqualTo(4000 * 512);
        });
    }

    @ParameterizedTest
    @ValueSource(ints = {0x07, 0x82, 0x83, 0x11, 0xEB})
    void otherTypesAreListedButHoldNoFat(int type) throws CardException, IOException {
        PartitionTable table = PartitionTableReader.read(
                new MbrBuilder(SIZE, 512).partition(type, 2048, 4000).build());

        assertThat(table.partitions()).singleElement().matches(partition -> !partition.fatType());
    }

    @ParameterizedTest
    @ValueSource(ints = {0x05, 0x0F})
    void anExtendedPartitionIsFollowed(int type) throws CardException, IOException {
        SparseDisk disk = new MbrBuilder(SIZE, 512)
                .partition(0x83, 64, 100)
                .extended(type, 1024, 8000, 0x0C, 63)
                .activePartition(0x0C, 10000, 1000)
                .build();

        PartitionTable table = PartitionTableReader.read(disk);

        assertThat(table.partitions()).extracting(Partition::number).containsExactly(1, 3, 5);
        assertThat(table.number(5).orElseThrow().start()).isEqualTo((1024 + 63) * 512);
        assertThat(table.number(5).orElseThrow().isLogical()).isTrue();
        assertThat(table.diskSignature()).hasValue(0x5C01AB07L);
        assertThat(table.number(3).orElseThrow().type()).isEqualTo("0x0C");
    }

    @Test
    void partitionsPastTheEndAreWarnedOf() throws CardException, IOException {
        SparseDisk disk = new MbrBuilder(SIZE, 512)
                .partition(0x0C, 2048, 8000)
                .partition(0x83, 12000, 4000)
                .build();

        PartitionTable table = PartitionTableReader.read(disk.cutOffAt(4096 * 512));

        assertThat(table.partitions()).extracting(Partition::number).containsExactly(1);
        assertThat(table.warnings())
                .satisfiesExactly(
                        first -> assertThat(first).contains("partition 1 reaches past the end"),
                        second -> assertThat(second).contains("partition 2 starts past the end"));
    }

    /** Sector numbers are 32 bits without a sign: half the range must not turn negative. */
    @Test
    void largestSectorNumbers() throws CardException, IOException {
        SparseDisk disk = new MbrBuilder(1L << 41, 512)
                .partition(0x0C, 0xFFFF_0000L, 0xFFFFL)
                .build();

        assertThat(PartitionTableReader.read(disk).partitions())
                .singleElement()
                .matches(partition -> partition.start() == 0xFFFF_0000L * 512);
    }

    @Test
    void deviceWithLargeSectorsCountsInThem() throws CardException, IOException {
        SparseDisk disk = new MbrBuilder(SIZE, 4096).partition(0x0C, 256, 1000).build();

        assertThat(PartitionTableReader.read(disk).partitions())
                .singleElement()
                .matches(partition -> partition.start() == 256 * 4096 && partition.length() == 1000 * 4096);
    }

    /** An image file does not say what sectors its card had; the place of the volume does. */
    @Test
    void imageOfACardWithLargeSectorsCountsInThemToo() throws CardException, IOException {
        SparseDisk large = new MbrBuilder(SIZE, 4096).partition(0x0C, 256, 1000).build();
        SparseDisk image = new SparseDisk(SIZE, 512);
        image.patch(0, large.toBytes(0, 4096));
        new FatBuilder(FatSpec.fat12(100).bytesPerSector(4096).rootEntries(128).build()).writeTo(image, 256 * 4096);

        assertThat(PartitionTableReader.read(image).partitions())
                .singleElement()
                .matches(partition -> partition.start() == 256 * 4096 && partition.sectorSize() == 4096);
    }

    @ParameterizedTest
    @CsvSource({"100", "5000", "70000"})
    void volumeWithoutATable(int clusters) throws CardException, IOException {
        FatSpec.Builder kind = clusters < 4085
                ? FatSpec.fat12(clusters)
                : clusters < 65525 ? FatSpec.fat16(clusters) : FatSpec.fat32(clusters);
        SparseDisk disk = kind.build().emptyDisk();
        new FatBuilder(kind.build()).writeTo(disk, 0);

        PartitionTable table = PartitionTableReader.read(disk);

        assertThat(table.kind()).isEqualTo(PartitionTable.Kind.NONE);
        assertThat(table.partitions())
                .singleElement()
                .matches(partition -> partition.number() == 0
                        && partition.start() == 0
                        && partition.length() == disk.getSize()
                        && partition.fatType());
    }

    @Test
    void lostFirstSectorOfAVolumeIsKnownByItsBackup() throws CardException, IOException {
        SparseDisk disk = FatSpec.fat32(70000).build().emptyDisk();
        new FatBuilder(FatSpec.fat32(70000).build()).writeTo(disk, 0);
        disk.patch(0, new byte[512]);

        PartitionTable table = PartitionTableReader.read(disk);

        assertThat(table.kind()).isEqualTo(PartitionTable.Kind.NONE);
        assertThat(table.warnings()).singleElement().asString().contains("backup boot sector");
    }

    @Test
    void whatIsNoCardIsRefusedInWords() {
        assertThatThrownBy(() -> PartitionTableReader.read(new SparseDisk(SIZE, 512)))
                .isInstanceOfSatisfying(CardException.class, e -> {
                    assertThat(e.kind()).isEqualTo(CardException.Kind.UNREADABLE);
                    assertThat(e).hasMessageContaining("no partition table");
                    assertThat(new StepNames().remedy(e)).isNotBlank();
                });
        assertThatThrownBy(() -> PartitionTableReader.read(new SparseDisk(0, 512)))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("less than one sector");
    }

    @Test
    void emptyTableHasNoPartitions() throws CardException, IOException {
        assertThat(PartitionTableReader.read(new MbrBuilder(SIZE, 512).build()).partitions())
                .isEmpty();
    }
}
