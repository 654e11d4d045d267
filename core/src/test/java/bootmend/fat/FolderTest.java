package bootmend.fat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatSpec;
import java.io.IOException;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class FolderTest {

    private static final List<String> NAMES = IntStream.range(0, 90)
            .mapToObj(i -> "overlay-number-" + i + ".dtbo")
            .toList();

    static Stream<FatSpec> specs() {
        return Stream.of(
                        FatSpec.fat12(4000),
                        FatSpec.fat16(5000).bytesPerSector(1024),
                        FatSpec.fat32(66000),
                        FatSpec.fat32(66000).sectorsPerCluster(2).bytesPerSector(4096))
                .map(FatSpec.Builder::build);
    }

    @ParameterizedTest
    @MethodSource("specs")
    void folderOverSeveralClusters(FatSpec spec) throws IOException {
        BuiltVolume built = withOverlays(spec);

        FatVolume volume = built.open();
        Directory overlays = volume.list(volume.find("OVERLAYS").orElseThrow());

        assertThat(overlays.entries()).extracting(DirectoryEntry::name).containsExactlyElementsOf(NAMES);
        assertThat(overlays.warnings()).isEmpty();
        for (String name : List.of(NAMES.get(0), NAMES.get(50), NAMES.get(89))) {
            assertThat(volume.find("overlays/" + name).orElseThrow().offset())
                    .isEqualTo(built.layout().entryOffset("overlays/" + name));
            assertThat(built.read("overlays/" + name).bytes()).isEqualTo(BuiltVolume.ascii(name));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 3, 7, 5000})
    void folderWhoseChainIsDamagedIsReadAsFarAsItGoes(int link) throws IOException {
        BuiltVolume built = withOverlays(FatSpec.fat16(4500).build());
        int[] chain = built.layout().chain("overlays");
        built.layout().setFatEntries(built.disk(), chain[3], link == 3 ? chain[1] : link);

        FatVolume volume = built.open();
        Directory overlays = volume.list(volume.find("overlays").orElseThrow());

        assertThat(overlays.entries()).hasSizeBetween(9, 90);
        assertThat(overlays.entries().get(0).name()).isEqualTo(NAMES.get(0));
        if (link != 7) {
            assertThat(overlays.warnings())
                    .anySatisfy(warning -> assertThat(warning).contains("cluster chain"));
        }
    }

    @Test
    void rootOfFat32ThatLoopsEnds() throws IOException {
        BuiltVolume built = BuiltVolume.of(FatSpec.fat32(66000).build(), builder -> {
            NAMES.forEach(name -> builder.file(name, new byte[0]));
            return builder;
        });
        int[] chain = built.layout().chain("");
        built.layout().setFatEntries(built.disk(), chain[chain.length - 2], chain[0]);

        Directory root = built.open().root();

        assertThat(root.entries()).hasSizeGreaterThan(60);
        assertThat(root.warnings()).anySatisfy(warning -> assertThat(warning).contains("loops back"));
    }

    @Test
    void fixedRootMayBeFull() throws IOException {
        BuiltVolume built = BuiltVolume.of(
                FatSpec.fat12(100).rootEntries(16).rootLabel(null).build(), builder -> {
                    IntStream.range(0, 16).forEach(i -> builder.add("", FatItem.file("F" + i, new byte[0])));
                    return builder;
                });

        assertThat(built.open().root().entries()).hasSize(16);
        assertThat(built.open().root().warnings()).isEmpty();
    }

    @Test
    void pathsLeadOnlyThroughFolders() throws IOException {
        BuiltVolume built = withOverlays(FatSpec.fat16(5000).build());

        assertThat(built.open().find("overlays/none.dtbo")).isEmpty();
        assertThat(built.open().find("cmdline.txt/none")).isEmpty();
        assertThat(built.open().find("overlays/../cmdline.txt")).isEmpty();
        assertThat(built.open().find("")).isEmpty();
        FatVolume volume = built.open();
        DirectoryEntry file = volume.find("cmdline.txt").orElseThrow();
        assertThatThrownBy(() -> volume.list(file)).hasMessageContaining("is a file");
    }

    private static BuiltVolume withOverlays(FatSpec spec) throws IOException {
        return BuiltVolume.of(spec, builder -> {
            builder.stride(2).file("cmdline.txt", new byte[4]).directory("overlays");
            NAMES.forEach(name -> builder.file("overlays/" + name, BuiltVolume.ascii(name)));
            return builder;
        });
    }
}
