package bootmend.fat;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.device.RecordingDevice;
import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatSpec;
import java.io.IOException;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Links on a card may lead anywhere; following them ends, reads what is there, and says what was wrong. */
class DamagedChainTest {

    private static final int[] CHAIN = {20, 25, 21, 40};
    private static final byte[] CONTENT = BuiltVolume.noise(4 * 512);

    static Stream<Arguments> damages() {
        return Stream.of(FatSpec.fat12(4000), FatSpec.fat16(5000), FatSpec.fat32(66000))
                .map(FatSpec.Builder::build)
                .flatMap(spec -> Stream.of(
                        Arguments.of(spec, 20, "loops back"),
                        Arguments.of(spec, 21, "loops back"),
                        Arguments.of(spec, 0, "marked free"),
                        Arguments.of(spec, 1, "outside the volume"),
                        Arguments.of(spec, spec.clusters() + 2, "outside the volume"),
                        Arguments.of(spec, bad(spec), "marked bad"),
                        Arguments.of(spec, bad(spec) + 1, "shorter than its size")));
    }

    /** BAD CLUSTER marks: FF7, FFF7, FFFFFF7; "FAT: General Overview", version 1.03, "FAT Data Structure". */
    private static int bad(FatSpec spec) {
        return switch (spec.kind()) {
            case FAT12 -> 0xFF7;
            case FAT16 -> 0xFFF7;
            case FAT32 -> 0x0FFFFFF7;
        };
    }

    @ParameterizedTest
    @MethodSource("damages")
    void whatComesBeforeTheDamageIsRead(FatSpec spec, int link, String words) throws IOException {
        BuiltVolume built = withChain(spec);
        built.layout().setFatEntries(built.disk(), 21, link);
        // A link to 0 or to a bad mark is the mark of cluster 21 itself, which is then no part of the chain.
        int whole = link == 0 || link == bad(spec) ? 2 : 3;

        FileContent read = built.read("CONFIG.TXT");

        assertThat(read.bytes()).isEqualTo(Arrays.copyOf(CONTENT, whole * 512));
        assertThat(read.warnings()).anySatisfy(warning -> assertThat(warning).contains(words));
        assertThat(read.isWhole()).isFalse();
    }

    @Test
    void aChainDamagedInOneCopyIsFollowedInAnother() throws IOException {
        for (FatSpec.Builder kind :
                new FatSpec.Builder[] {FatSpec.fat12(4000), FatSpec.fat16(5000), FatSpec.fat32(66000)}) {
            BuiltVolume built = withChain(kind.fatCount(3).build());
            built.layout().setFatEntry(built.disk(), 0, 21, 20);
            built.layout().setFatEntry(built.disk(), 1, 25, 0);

            FileContent read = built.read("CONFIG.TXT");

            assertThat(read.bytes()).isEqualTo(CONTENT);
            assertThat(read.warnings()).singleElement().asString().contains("loops back", "copy 3");
        }
    }

    @Test
    void aChainThatEndsEarlyInOneCopyIsSaidToBeShort() throws IOException {
        BuiltVolume built = withChain(FatSpec.fat16(5000).build());
        built.layout().setFatEntry(built.disk(), 0, 21, 0xFFFF);

        FileContent read = built.read("CONFIG.TXT");

        assertThat(read.bytes()).isEqualTo(CONTENT);
        assertThat(read.warnings())
                .singleElement()
                .asString()
                .contains("too short", "copy 2")
                .doesNotContain("as it should");
    }

    @Test
    void onlyTheActiveCopyCountsWhereMirroringIsOff() throws IOException {
        BuiltVolume built =
                withChain(FatSpec.fat32(66000).fatCount(3).activeFat(2).build());

        FileContent read = built.read("CONFIG.TXT");

        assertThat(read.bytes()).isEqualTo(CONTENT);
        assertThat(read.warnings()).isEmpty();
        assertThat(built.open().geometry().fatsInUse()).containsExactly(2);
    }

    /** On an image that was cut off inside the file, later clusters must not move up into the gap. */
    @Test
    void bytesBehindAGapAreNotMovedIntoIt() throws IOException {
        BuiltVolume built = BuiltVolume.of(
                FatSpec.fat16(5000).sectorsPerCluster(4).build(),
                builder -> builder.add(
                        "", FatItem.file("CONFIG.TXT", BuiltVolume.noise(3000)).at(4000, 20)));
        long end = built.layout().clusterOffset(4000) + 1024;
        FatVolume volume = FatVolume.open(built.disk().cutOffAt(end));

        FileContent read = volume.read(volume.find("config.txt").orElseThrow(), 1 << 20);

        assertThat(read.bytes()).isEqualTo(Arrays.copyOf(BuiltVolume.noise(3000), 1024));
        assertThat(read.warnings()).singleElement().asString().contains("only 1024 of the file's 3000 bytes");
    }

    @Test
    void anImpossibleSizeCostsNoReads() throws IOException {
        BuiltVolume built = withChain(FatSpec.fat32(66000).build());
        built.disk().patch(built.layout().entryOffset("CONFIG.TXT") + 28, (byte) -1, (byte) -1, (byte) -1, (byte) -1);
        RecordingDevice device = new RecordingDevice(built.disk());
        FatVolume volume = FatVolume.open(device);

        FileContent read = volume.read(volume.find("config.txt").orElseThrow(), 1 << 20);

        assertThat(read.bytes()).isEqualTo(CONTENT);
        assertThat(read.warnings()).isNotEmpty();
        assertThat(device.reads()).hasSizeLessThan(20);
    }

    private static BuiltVolume withChain(FatSpec spec) throws IOException {
        return BuiltVolume.of(
                spec,
                builder -> builder.add("", FatItem.file("CONFIG.TXT", CONTENT).at(CHAIN)));
    }
}
