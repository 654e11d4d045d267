package bootmend.boot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.tuning.DataFile;
import bootmend.tuning.DataFileException;
import bootmend.tuning.TuningTables;
import java.io.StringReader;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class BoardFilesTest {

    private static final TuningTables TABLES = TuningTables.load();
    private static final BootTables BOOT = new BootTables(TABLES);

    /** Source: config_txt/boot.adoc, commit 0456a78c, table of kernels. */
    @Test
    void defaultKernelsAreThePublishedOnes() {
        List.of("pi0", "pi0w", "pi1", "cm1")
                .forEach(id -> assertThat(BOOT.of(id).kernels32()).as(id).containsExactly("kernel.img"));
        List.of("pi2", "pi3", "pi3+", "pi02", "cm3", "cm3+")
                .forEach(id -> assertThat(BOOT.of(id).kernels32()).as(id).containsExactly("kernel7.img"));
        List.of("pi4", "pi400", "cm4").forEach(id -> {
            assertThat(BOOT.of(id).kernels64()).as(id).containsExactly("kernel8.img");
            assertThat(BOOT.of(id).kernels32()).as(id).containsExactly("kernel7l.img");
            assertThat(BOOT.of(id).defaultsTo64()).as(id).isTrue();
        });
        List.of("pi5", "pi500", "cm5")
                .forEach(id ->
                        assertThat(BOOT.of(id).kernels64()).as(id).containsExactly("kernel_2712.img", "kernel8.img"));
    }

    /** Source: overlay check script, list of device-tree names, the maker's utilities repository, commit a30e7c7b. */
    @Test
    void deviceTreesAreThePublishedOnes() {
        Set<String> published = Set.of(
                "bcm2708-rpi-b.dtb",
                "bcm2708-rpi-b-rev1.dtb",
                "bcm2708-rpi-b-plus.dtb",
                "bcm2708-rpi-cm.dtb",
                "bcm2708-rpi-zero.dtb",
                "bcm2708-rpi-zero-w.dtb",
                "bcm2709-rpi-2-b.dtb",
                "bcm2710-rpi-2-b.dtb",
                "bcm2710-rpi-3-b.dtb",
                "bcm2710-rpi-3-b-plus.dtb",
                "bcm2710-rpi-cm3.dtb",
                "bcm2710-rpi-zero-2-w.dtb",
                "bcm2710-rpi-cm0.dtb",
                "bcm2711-rpi-4-b.dtb",
                "bcm2711-rpi-400.dtb",
                "bcm2711-rpi-cm4.dtb",
                "bcm2711-rpi-cm4s.dtb",
                "bcm2712-rpi-5-b.dtb",
                "bcm2712-rpi-500.dtb",
                "bcm2712-rpi-cm5-cm5io.dtb",
                "bcm2712-rpi-cm5-cm4io.dtb",
                "bcm2712-rpi-cm5l-cm5io.dtb",
                "bcm2712-rpi-cm5l-cm4io.dtb");
        Set<String> known = BOOT.all().stream()
                .flatMap(board -> board.trees().stream())
                .flatMap(variant -> variant.names().stream())
                .collect(Collectors.toSet());
        assertThat(known).containsAll(published);
        // Beside these stand only three that the data file calls values from memory.
        assertThat(known).hasSize(published.size() + 3);
    }

    @Test
    void firmwareIsOnTheCardBeforePi5Alone() {
        assertThat(BOOT.all().stream().filter(board -> board.start().isEmpty()).map(BoardFiles::board))
                .containsExactly("pi5", "pi500", "cm5");
        assertThat(BOOT.all().stream().filter(BoardFiles::needsConfig).map(BoardFiles::board))
                .containsExactly("pi5", "pi500", "cm5");
        assertThat(BOOT.all().stream()
                        .filter(board -> board.secondStage().isEmpty())
                        .map(BoardFiles::board))
                .containsExactly("pi4", "pi400", "cm4", "cm4s", "pi5", "pi500", "cm5");
    }

    @Test
    void usualFilesAreGivenAsPhrases() {
        assertThat(BOOT.usualFiles("pi4"))
                .containsExactly("kernel8.img or kernel7l.img", "start4.elf with fixup4.dat", "bcm2711-rpi-4-b.dtb");
    }

    @Test
    void aTableWithoutABoardIsRefused() {
        DataFile file = DataFile.read("boards.csv", new StringReader("""
                board,second_stage,start,kernel_32,kernel_64,bits,device_tree,upstream_tree,overlay_chip,needs_config,needs_tree,order
                pi4,none,4,kernel7l.img,kernel8.img,64,a.dtb,,bcm2711,no,yes,1
                """));
        assertThatThrownBy(() -> BoardFiles.read(file, TABLES.boards()))
                .isInstanceOf(DataFileException.class)
                .hasMessageContaining("no row for pi0");
    }
}
