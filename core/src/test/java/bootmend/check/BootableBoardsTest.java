package bootmend.check;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.config.ConfigDocument;
import bootmend.config.IncludeSource;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.Resolver;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Which boards boot from which files; source: "Boot options", config_txt/boot.adoc, commit f6839a6f. Boards that it does
 * not name, the names of the pairs and the device trees are values from memory.
 */
class BootableBoardsTest {

    private static final TuningTables TABLES = TuningTables.load();

    private final BootableBoards boards = new BootableBoards(TABLES);

    @Test
    void firmwareAndKernelOfTheOldestBoardsServeThemAlone() {
        assertThat(bootable(files("bootcode.bin", "start.elf", "fixup.dat", "kernel.img")))
                .containsExactly("pi0", "pi0w", "pi1", "cm1");
    }

    @Test
    void theSecondKernelServesTheBoardsBetween() {
        assertThat(bootable(files("bootcode.bin", "start.elf", "fixup.dat", "kernel7.img")))
                .containsExactly("pi02", "cm0", "pi2", "pi3", "pi3+", "cm3", "cm3+");
    }

    @Test
    void the32BitKernelServesThePi4FamilyOnlyWhereTheConfigFileSaysSo() {
        CardFiles files = files("start4.elf", "fixup4.dat", "kernel7l.img");

        assertThat(bootable(files)).isEmpty();
        assertThat(bootable(files, "arm_64bit=0")).containsExactly("pi4", "pi400", "cm4", "cm4s");
    }

    @Test
    void pi5NeedsAKernelAlone() {
        assertThat(bootable(files("kernel8.img"))).containsExactly("pi5", "pi500", "cm5");
    }

    @Test
    void firmwareCountsInPairsAlone() {
        assertThat(bootable(files("start4.elf", "fixup4x.dat", "kernel8.img"))).doesNotContain("pi4");
        assertThat(bootable(files("start4.elf", "fixup4.dat", "kernel8.img"))).contains("pi4");
    }

    @Test
    void boardsBeforePi4NeedBootcode() {
        assertThat(bootable(files("start.elf", "fixup.dat", "kernel7.img"))).isEmpty();
    }

    @Test
    void aKernelThatTheConfigFileNamesTakesTheDefaultsPlace() {
        CardFiles files = files("start4.elf", "fixup4.dat", "lab.img");

        assertThat(bootable(files)).isEmpty();
        assertThat(bootable(files, "[pi4]", "kernel=lab.img")).containsExactly("pi4", "pi400", "cm4", "cm4s");
    }

    @Test
    void aKernelBehindAPrefixCounts() {
        CardFiles files = files("start4.elf", "fixup4.dat", "lab/kernel8.img", "lab/bcm2711-pi4.dtb");

        assertThat(bootable(files)).isEmpty();
        assertThat(bootable(files, "os_prefix=lab/")).contains("pi4");
    }

    @Test
    void deviceTreesNarrowWhereThereAreAny() {
        assertThat(bootable(files("kernel8.img", "start4.elf", "fixup4.dat")))
                .containsExactly("pi4", "pi400", "cm4", "cm4s", "pi5", "pi500", "cm5");
        assertThat(bootable(files("kernel8.img", "start4.elf", "fixup4.dat", "bcm2711-pi4.dtb")))
                .containsExactly("pi4", "pi400", "cm4", "cm4s");
    }

    @Test
    void everyKnownBoardHasItsUsualFiles() {
        assertThat(TABLES.boards().all())
                .allSatisfy(board -> assertThat(boards.usualFiles(board.id())).isNotEmpty());
        assertThat(boards.usualFiles("pi4")).startsWith("kernel8.img or kernel7l.img", "start4.elf with fixup4.dat");
        assertThat(boards.usualFiles("pi1")).startsWith("kernel.img", "start.elf with fixup.dat", "bootcode.bin");
    }

    private static CardFiles files(String... paths) {
        return new CardFiles(
                Stream.of(paths).map(path -> CardFiles.Entry.file(path, 1)).toList());
    }

    private List<String> bootable(CardFiles files, String... config) {
        ConfigDocument document =
                ConfigDocument.parse((String.join("\n", config) + "\n").getBytes(StandardCharsets.US_ASCII));
        return TABLES.boards().all().stream()
                .filter(board -> boards.canBoot(
                        new Resolver(TABLES)
                                .resolve("config.txt", document, IncludeSource.none(), BoardFacts.of(board)),
                        files))
                .map(Board::id)
                .toList();
    }
}
