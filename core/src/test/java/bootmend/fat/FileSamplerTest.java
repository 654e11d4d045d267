package bootmend.fat;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.device.RecordingDevice;
import bootmend.fixtures.BootFiles;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatLayout;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** A bounded look into files, and how full a volume is. What the files hold is known from how they were made. */
class FileSamplerTest {

    private static final int CLUSTERS = 5000;

    @Test
    void aFullFileHasNoZeroCluster() throws IOException {
        FileSample sample = sample("kernel8.img", BootFiles.named("kernel8.img", 20_000));
        assertThat(sample.size()).isEqualTo(20_000);
        assertThat(sample.head()).hasSize(FileSampler.HEAD);
        assertThat(sample.zeroClusters()).hasSize(FileSampler.CLUSTERS).containsOnly(false);
        assertThat(sample.doubts()).isEmpty();
    }

    @Test
    void aFileOfZerosIsToldFromOneWithZerosAtItsEnd() throws IOException {
        byte[] cut = Arrays.copyOf(BootFiles.named("start4.elf", 6_000), 40_000);
        assertThat(sample("start4.elf", new byte[40_000]).isAllZero()).isTrue();
        assertThat(sample("start4.elf", cut).isAllZero()).isFalse();
        assertThat(sample("start4.elf", cut).hasZeroTail()).isTrue();
        assertThat(sample("start4.elf", new byte[40_000]).hasZeroTail()).isFalse();
    }

    @Test
    void theLastClusterIsLookedAtOnlyAsFarAsTheFileGoes() throws IOException {
        byte[] content = new byte[513];
        content[512] = 1;
        assertThat(sample("a.bin", content).zeroClusters()).containsExactly(true, false);
        assertThat(sample("a.bin", new byte[0]).zeroClusters()).isEmpty();
    }

    @Test
    void aLoopingChainIsADoubtAndNoEndlessWalk() throws IOException {
        FatBuilder builder = new FatBuilder(FatSpec.fat16(CLUSTERS).build())
                .file("kernel8.img", BootFiles.named("kernel8.img", 20_000));
        SparseDisk disk = FatSpec.fat16(CLUSTERS).build().emptyDisk();
        FatLayout layout = builder.writeTo(disk, 0);
        int[] chain = layout.chain("kernel8.img");
        layout.setFatEntries(disk, chain[20], chain[3]);
        FatVolume volume = FatVolume.open(disk);
        assertThat(new FileSampler(volume)
                        .sample(volume.find("kernel8.img").orElseThrow())
                        .doubts())
                .isNotEmpty();
    }

    @Test
    void aLargeFileCostsFewReads() throws IOException {
        FatSpec spec = FatSpec.fat16(60_000).sectorsPerCluster(4).build();
        SparseDisk disk = spec.emptyDisk();
        new FatBuilder(spec).add("", FatItem.zeros("kernel8.img", 40_000_000)).writeTo(disk, 0);
        RecordingDevice recorder = new RecordingDevice(disk);
        FatVolume volume = FatVolume.open(recorder);
        FileSample sample =
                new FileSampler(volume).sample(volume.find("kernel8.img").orElseThrow());
        assertThat(sample.isAllZero()).isTrue();
        // 19,532 FAT16 entries stand in 77 sectors; the rest is the head, eight clusters and the folder.
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

    private static FileSample sample(String name, byte[] content) throws IOException {
        FatSpec spec = FatSpec.fat16(CLUSTERS).build();
        SparseDisk disk = spec.emptyDisk();
        new FatBuilder(spec).file(name, content).writeTo(disk, 0);
        FatVolume volume = FatVolume.open(disk);
        return new FileSampler(volume).sample(volume.find(name).orElseThrow());
    }
}
