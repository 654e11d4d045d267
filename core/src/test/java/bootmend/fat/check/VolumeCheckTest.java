package bootmend.fat.check;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.device.RecordingDevice;
import bootmend.fat.BuiltVolume;
import bootmend.finding.Finding;
import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.FsInfoState;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The full look at a volume, where the catalogue of damaged cards does not go. */
class VolumeCheckTest {

    private static final int[] CHAIN = {100, 101, 200, 201, 202};

    @ParameterizedTest
    @ValueSource(strings = {"FAT12", "FAT16", "FAT32"})
    void nothingIsWrongWithAHealthyVolume(String type) throws IOException {
        BuiltVolume built = built(spec(type).build());
        assertThat(VolumeCheck.of(built.disk()).findings()).isEmpty();
    }

    /** FFFFFFFF says "not known"; source: "FAT: General Overview", version 1.03, FSI_Free_Count and FSI_Nxt_Free. */
    @Test
    void fsInfoMayBeUnknownOrAbsent() throws IOException {
        assertThat(VolumeCheck.of(
                                built(spec("FAT32").fsInfo(FsInfoState.UNKNOWN).build())
                                        .disk())
                        .findings())
                .isEmpty();
        assertThat(VolumeCheck.of(built(spec("FAT32").fsInfo(FsInfoState.ABSENT).build())
                                .disk())
                        .findings())
                .isEmpty();
    }

    @Test
    void reservedBitsAndOtherSectorSizesAreNoDamage() throws IOException {
        assertThat(VolumeCheck.of(built(spec("FAT32").upperBits(0xA).build()).disk())
                        .findings())
                .isEmpty();
        assertThat(VolumeCheck.of(built(spec("FAT16").bytesPerSector(4096).build())
                                .disk())
                        .findings())
                .isEmpty();
        assertThat(VolumeCheck.of(built(spec("FAT16").fatCount(1).build()).disk())
                        .findings())
                .isEmpty();
    }

    @Test
    void onlyTheActiveCopyCountsWhereMirroringIsOff() throws IOException {
        BuiltVolume built = built(spec("FAT32").activeFat(1).build());
        built.disk().patch(built.layout().fatOffset(0) + 400, new byte[512]);
        assertThat(VolumeCheck.of(built.disk()).findings()).isEmpty();
    }

    /** An entry of FAT12 that lies in two sectors differs once. */
    @Test
    void entriesOverTwoSectorsAreCountedOnce() throws IOException {
        BuiltVolume built = BuiltVolume.of(
                spec("FAT12").build(),
                builder -> builder.add(
                        "", FatItem.file("KERNEL.IMG", new byte[512]).at(341)));
        built.layout().setFatEntry(built.disk(), 1, 341, 0);
        assertThat(VolumeCheck.of(built.disk()).findings()).singleElement().satisfies(finding -> {
            assertThat(finding.id()).isEqualTo(VolumeFault.FAT_COPIES.rule().id());
            assertThat(finding.what()).contains("differ in 1 place", "copy 1 is taken");
        });
    }

    @Test
    void aFolderThatListsItselfIsReadOnce() throws IOException {
        BuiltVolume built = BuiltVolume.of(
                spec("FAT16").build(), builder -> builder.directory("outer").file("outer/inner.txt", new byte[10]));
        int folder = built.layout().chain("outer")[0];
        long entry = built.layout().entryOffset("outer/inner.txt");
        built.disk().patch(entry + 11, (byte) 0x10);
        built.disk().patch(entry + 26, (byte) folder, (byte) (folder >> 8));
        built.disk().patch(entry + 28, new byte[4]);

        assertThat(faults(built)).contains(VolumeFault.CROSS_LINKED);
    }

    @Test
    void foldersDeepInFoldersAreBounded() throws IOException {
        List<String> paths = new ArrayList<>();
        String path = "A";
        for (int depth = 0; depth < TreeWalk.MAX_DEPTH + 5; depth++) {
            paths.add(path);
            path += "/A";
        }
        BuiltVolume built = BuiltVolume.of(spec("FAT16").build(), builder -> {
            paths.forEach(builder::directory);
            return builder;
        });
        VolumeCheck check = VolumeCheck.of(built.disk());
        assertThat(check.findings()).extracting(Finding::rule).contains(VolumeFault.TOO_LARGE.rule());
        assertThat(VolumeRepair.lostClusters().changes(check)).isEmpty();
    }

    @Test
    void dotEntriesThatLeadElsewhereAreFound() throws IOException {
        BuiltVolume built = BuiltVolume.of(
                spec("FAT16").build(), builder -> builder.directory("overlays").file("overlays/a.dtbo", new byte[10]));
        built.disk().patch(built.layout().clusterOffset(built.layout().chain("overlays")[0]) + 26, (byte) 99);
        assertThat(faults(built)).containsExactly(VolumeFault.FOLDER_DOTS);
    }

    @Test
    void aFolderWithASizeIsRepairedToNone() throws IOException {
        BuiltVolume built = BuiltVolume.of(spec("FAT16").build(), builder -> builder.directory("overlays"));
        built.disk().patch(built.layout().entryOffset("overlays") + 28, (byte) 1);
        assertThat(faults(built)).containsExactly(VolumeFault.FOLDER_SIZE);
        built.write(VolumeRepair.filesAndFolders().changes(VolumeCheck.of(built.disk())));
        assertThat(faults(built)).isEmpty();
    }

    /** What is over the bound is left to the next run, and nothing of it is lost on the way. */
    @Test
    void aChainThatIsFarTooLongIsFreedInParts() throws IOException {
        BuiltVolume built = built(spec("FAT16").build());
        built.disk().patch(built.layout().entryOffset("KERNEL.IMG") + 28, (byte) 1, (byte) 0, (byte) 0, (byte) 0);
        assertThat(faults(built)).containsExactly(VolumeFault.CHAIN_LONG);

        built.write(new FileRepair(2).changes(VolumeCheck.of(built.disk())));

        assertThat(VolumeCheck.of(built.disk()).findings()).singleElement().satisfies(finding -> {
            assertThat(VolumeFault.LOST_CLUSTERS.isKindOf(finding)).isTrue();
            assertThat(finding.what()).startsWith((CHAIN.length - 1 - 2) + " clusters");
        });
        built.write(VolumeRepair.lostClusters().changes(VolumeCheck.of(built.disk())));
        assertThat(faults(built)).isEmpty();
    }

    /** Entries 0 and 1; source: "FAT: General Overview", version 1.03, "FAT Data Structure". */
    @ParameterizedTest
    @ValueSource(strings = {"FAT12", "FAT16", "FAT32"})
    void firstEntriesThatAreWrongInEveryCopyArePutRight(String type) throws IOException {
        BuiltVolume built = built(spec(type).build());
        byte[] whole = built.disk().toBytes(built.layout().fatOffset(0), 512);
        built.layout().setFatEntries(built.disk(), 0, 0);
        built.layout().setFatEntries(built.disk(), 1, 5);
        assertThat(faults(built)).containsExactly(VolumeFault.FAT_MARKS);
        built.write(VolumeRepair.marks().changes(VolumeCheck.of(built.disk())));
        assertThat(built.disk().toBytes(built.layout().fatOffset(0), 512)).isEqualTo(whole);
        assertThat(faults(built)).isEmpty();
    }

    /** A look reads each FAT copy twice at most and the folders; never the files. */
    @Test
    void aLookReadsNoFile() throws IOException {
        BuiltVolume built = BuiltVolume.of(
                spec("FAT16").build(),
                builder -> builder.file("kernel.img", new byte[2 << 20]).file("config.txt", new byte[10]));
        RecordingDevice device = new RecordingDevice(built.disk());
        VolumeCheck.of(device);
        long fats = 2L * built.spec().fatSectors() * 512;
        assertThat(device.bytesRead()).isLessThan(3 * fats + 32_768);
    }

    private static BuiltVolume built(FatSpec spec) throws IOException {
        return BuiltVolume.of(
                spec,
                builder -> builder.directory("overlays")
                        .file("overlays/a long name.dtbo", new byte[700])
                        .add(
                                "",
                                FatItem.file("KERNEL.IMG", BuiltVolume.noise(4 * spec.clusterBytes() + 1))
                                        .at(CHAIN)));
    }

    private static FatSpec.Builder spec(String type) {
        return switch (type) {
            case "FAT12" -> FatSpec.fat12(500);
            case "FAT16" -> FatSpec.fat16(5000);
            default -> FatSpec.fat32(65_600);
        };
    }

    private static List<VolumeFault> faults(BuiltVolume built) throws IOException {
        return VolumeCheck.of(built.disk()).findings().stream()
                .map(VolumeCheckTest::fault)
                .toList();
    }

    private static VolumeFault fault(Finding finding) {
        return Stream.of(VolumeFault.values())
                .filter(fault -> fault.isKindOf(finding))
                .findAny()
                .orElseThrow();
    }
}
