package bootmend.fat;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.device.RecordingDevice;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatLayout;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SampleBootFiles;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Bytes of a file at any place, and how full a volume is. What the files hold is known from how they were made. */
class FileBytesTest {

    private static final int CLUSTERS = 5000;
    private static final byte[] CONTENT = SampleBootFiles.named("kernel7.img", 20_001);

    private static FatVolume volume(int stride) throws IOException {
        FatSpec spec = FatSpec.fat16(CLUSTERS).build();
        SparseDisk disk = spec.emptyDisk();
        new FatBuilder(spec).stride(stride).file("a.bin", CONTENT).writeTo(disk, 0);
        return FatVolume.open(disk);
    }

    @Test
    void anyPieceOfAFileIsReadWhetherItsClustersLieTogetherOrApart() throws IOException {
        SplittableRandom random = new SplittableRandom(3);
        for (int stride : new int[] {1, 3}) {
            FatVolume volume = volume(stride);
            FileBytes bytes = volume.bytes(volume.find("a.bin").orElseThrow());
            assertThat(bytes.size()).isEqualTo(CONTENT.length);
            assertThat(bytes.warnings()).isEmpty();
            for (int i = 0; i < 300; i++) {
                int from = random.nextInt(CONTENT.length + 100);
                int length = random.nextInt(9000);
                assertThat(bytes.read(from, length))
                        .isEqualTo(Arrays.copyOfRange(
                                CONTENT, Math.min(from, CONTENT.length), Math.min(from + length, CONTENT.length)));
            }
        }
    }

    @Test
    void aLoopingChainIsAWarningAndNoEndlessWalk() throws IOException {
        FatBuilder builder = new FatBuilder(FatSpec.fat16(CLUSTERS).build()).file("a.bin", CONTENT);
        SparseDisk disk = FatSpec.fat16(CLUSTERS).build().emptyDisk();
        FatLayout layout = builder.writeTo(disk, 0);
        int[] chain = layout.chain("a.bin");
        layout.setFatEntries(disk, chain[20], chain[3]);
        FatVolume volume = FatVolume.open(disk);
        FileBytes bytes = volume.bytes(volume.find("a.bin").orElseThrow());
        assertThat(bytes.warnings()).isNotEmpty();
        assertThat(bytes.read(0, CONTENT.length)).hasSize(21 * 512);
    }

    @Test
    void aFileThatTheImageCutsOffIsAWarning() throws IOException {
        FatSpec spec = FatSpec.fat16(CLUSTERS).build();
        SparseDisk disk = spec.emptyDisk();
        new FatBuilder(spec).file("a.bin", CONTENT).writeTo(disk, 0);
        FatVolume volume = FatVolume.open(disk.cutOffAt((spec.dataSector() + 10) * 512));
        FileBytes bytes = volume.bytes(volume.find("a.bin").orElseThrow());
        assertThat(bytes.warnings()).containsExactly("the card or image ends before the file does");
        assertThat(bytes.read(0, CONTENT.length)).isEqualTo(Arrays.copyOf(CONTENT, 10 * 512));
        assertThat(bytes.read(15_000, 100)).isEmpty();
    }

    @Test
    void aPieceOfALargeFileCostsFewReads() throws IOException {
        FatSpec spec = FatSpec.fat16(60_000).sectorsPerCluster(4).build();
        SparseDisk disk = spec.emptyDisk();
        new FatBuilder(spec).add("", FatItem.zeros("kernel8.img", 40_000_000)).writeTo(disk, 0);
        RecordingDevice recorder = new RecordingDevice(disk);
        FatVolume volume = FatVolume.open(recorder);
        assertThat(volume.bytes(volume.find("kernel8.img").orElseThrow()).read(39_000_000, 512))
                .hasSize(512);
        // 19,532 FAT16 entries stand in 77 sectors; the rest is the boot sector, the folder and the piece itself.
        assertThat(recorder.reads()).hasSizeLessThan(120);
    }

    @Test
    void freeClustersAreThoseThatNoFileHas() throws IOException {
        FatSpec spec = FatSpec.fat16(CLUSTERS).build();
        SparseDisk disk = spec.emptyDisk();
        new FatBuilder(spec)
                .file("a.bin", new byte[5 * 512])
                .file("b.bin", new byte[100])
                .writeTo(disk, 0);
        VolumeSpace space = VolumeSpace.of(FatVolume.open(disk));
        assertThat(space.clusters()).isEqualTo(CLUSTERS);
        assertThat(space.freeClusters()).isEqualTo(CLUSTERS - 6);
        assertThat(space.freeBytes()).isEqualTo((CLUSTERS - 6) * 512L);
    }
}
