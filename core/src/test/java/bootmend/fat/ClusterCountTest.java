package bootmend.fat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatSpec;
import java.io.IOException;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The FAT type follows from the cluster count alone: below 4085 it is FAT12, below 65525 FAT16, else FAT32.
 *
 * <p>Source: "FAT: General Overview of On-Disk Format", version 1.03, "FAT Type Determination".
 */
class ClusterCountTest {

    @ParameterizedTest
    @CsvSource({"4084, FAT12", "4085, FAT16", "65524, FAT16", "65525, FAT32"})
    void typeAtTheBoundaries(int clusters, FatType expected) throws IOException {
        byte[] content = BuiltVolume.noise(700);
        BuiltVolume built = BuiltVolume.of(
                shape(clusters).build(),
                builder -> builder.add("", FatItem.file("LAST.BIN", content).at(clusters, clusters + 1)));

        Geometry geometry = built.open().geometry();

        assertThat(geometry.type()).isEqualTo(expected);
        assertThat(geometry.clusterCount()).isEqualTo(clusters);
        assertThat(built.read("last.bin")).satisfies(read -> {
            assertThat(read.bytes()).isEqualTo(content);
            assertThat(read.isWhole()).isTrue();
        });
    }

    /** Sectors at the end that fill no cluster do not count (same source: the division rounds down). */
    @ParameterizedTest
    @CsvSource({"4084, FAT12", "65524, FAT16"})
    void spareSectorsMakeNoCluster(int clusters, FatType expected) throws IOException {
        FatSpec spec = shape(clusters).sectorsPerCluster(8).spareSectors(7).build();

        Geometry geometry = BuiltVolume.of(spec, builder -> builder).open().geometry();

        assertThat(geometry.type()).isEqualTo(expected);
        assertThat(geometry.clusterCount()).isEqualTo(clusters);
    }

    static Stream<Arguments> shapes() {
        return Stream.of(512, 1024, 2048, 4096)
                .flatMap(sector -> IntStream.iterate(1, n -> n <= 128, n -> 2 * n)
                        .boxed()
                        .map(perCluster ->
                                Arguments.of(sector, perCluster, 1 + Integer.numberOfTrailingZeros(perCluster) % 3)));
    }

    @ParameterizedTest
    @MethodSource("shapes")
    void readsScatteredFilesAtEverySectorAndClusterSize(int sector, int perCluster, int copies) throws IOException {
        byte[] content = BuiltVolume.noise(2 * sector * perCluster + 7);
        for (int clusters : new int[] {60, 4085}) {
            FatSpec spec = shape(clusters)
                    .bytesPerSector(sector)
                    .sectorsPerCluster(perCluster)
                    .fatCount(copies)
                    .build();
            BuiltVolume built = BuiltVolume.of(
                    spec,
                    builder -> builder.stride(3).directory("sub").file("sub/a file of three clusters.bin", content));

            FatVolume volume = built.open();

            assertThat(volume.geometry().fatCount()).isEqualTo(copies);
            assertThat(volume.geometry().bytesPerCluster()).isEqualTo(sector * perCluster);
            assertThat(volume.geometry().length()).isEqualTo(spec.bytes());
            FileContent read = built.read("sub/a file of three clusters.bin");
            assertThat(read.bytes()).isEqualTo(content);
            assertThat(read.warnings()).isEmpty();
        }
    }

    @ParameterizedTest
    @CsvSource({"512, 1, 1", "1024, 2, 2", "4096, 1, 3"})
    void readsFat32AtSeveralSizes(int sector, int perCluster, int copies) throws IOException {
        byte[] content = BuiltVolume.noise(3 * sector * perCluster - 1);
        FatSpec spec = shape(65525)
                .bytesPerSector(sector)
                .sectorsPerCluster(perCluster)
                .fatCount(copies)
                .build();
        BuiltVolume built =
                BuiltVolume.of(spec, builder -> builder.rootAt(9, 5).stride(5).file("kernel8.img", content));

        assertThat(built.read("KERNEL8.IMG").bytes()).isEqualTo(content);
        assertThat(built.open().geometry().rootCluster()).isEqualTo(9);
        assertThat(built.open().geometry().serial()).isEqualTo(spec.serial() & 0xFFFFFFFFL);
        assertThat(built.open().root().label()).contains("BOOT");
    }

    /** Cards are made as FAT32 with too few clusters for the rule; other systems read those by their layout, too. */
    @Test
    void smallVolumeLaidOutAsFat32IsReadByItsLayout() throws IOException {
        FatSpec spec = FatSpec.fat32(2000).anyClusterCount().build();
        BuiltVolume built = BuiltVolume.of(spec, builder -> builder.file("config.txt", BuiltVolume.ascii("a=1\n")));

        assertThat(built.open().geometry().type()).isEqualTo(FatType.FAT32);
        assertThat(built.read("config.txt").bytes()).isEqualTo(BuiltVolume.ascii("a=1\n"));
    }

    /** BPB_RootEntCnt "must be set to 0" on FAT32 (same source, "Boot Sector and BPB"): where the data lies is not sure. */
    @Test
    void fixedRootOnFat32IsRefused() throws IOException {
        BuiltVolume built =
                BuiltVolume.of(FatSpec.fat32(70000).backupBootSector(0).build(), builder -> builder);
        built.disk().patch(17, (byte) 16, (byte) 0);

        assertThatThrownBy(built::open)
                .isInstanceOf(BadVolumeException.class)
                .hasMessageContaining("mixes the layouts");
    }

    static FatSpec.Builder shape(int clusters) {
        if (clusters < 4085) {
            return FatSpec.fat12(clusters);
        }
        return clusters < 65525 ? FatSpec.fat16(clusters) : FatSpec.fat32(clusters);
    }
}
