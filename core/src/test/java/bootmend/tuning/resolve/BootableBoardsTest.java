package bootmend.tuning.resolve;

import static bootmend.tuning.resolve.RuleCase.board;
import static bootmend.tuning.resolve.RuleCase.rule;
import static org.assertj.core.api.Assertions.assertThat;

import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Which boards boot from which files; source: "Boot options", config_txt/boot.adoc, commit f6839a6f. */
class BootableBoardsTest {

    private static final TuningTables TABLES = TuningTables.load();

    private final BootableBoards boards = new BootableBoards(TABLES.boardFiles());

    @Test
    void firmwareAndKernelOfTheOldestBoardsServeThemAlone() {
        assertThat(bootable(Set.of("bootcode.bin", "start.elf", "fixup.dat", "kernel.img")))
                .containsExactly("pi0", "pi0w", "pi1", "cm1");
    }

    @Test
    void the32BitKernelOfThePi4FamilyServesItAlone() {
        assertThat(bootable(Set.of("start4.elf", "fixup4.dat", "kernel7l.img")))
                .containsExactly("pi4", "pi400", "cm4", "cm4s");
    }

    @Test
    void pi5NeedsAKernelAlone() {
        assertThat(bootable(Set.of("kernel8.img"))).containsExactly("pi5", "pi500", "cm5");
    }

    @Test
    void firmwareCountsInPairsAlone() {
        assertThat(missing("pi4", Set.of("start4.elf", "fixup4x.dat", "kernel8.img")))
                .containsExactly("start4.elf with fixup4.dat");
        assertThat(missing("pi4", Set.of("start4x.elf", "fixup4x.dat", "kernel8.img"))).isEmpty();
    }

    @Test
    void boardsBeforePi4NeedBootcode() {
        assertThat(missing("pi3", Set.of("start.elf", "fixup.dat", "kernel7.img"))).containsExactly("bootcode.bin");
    }

    @Test
    void aKernelThatTheConfigFileNamesTakesTheDefaultsPlace() {
        Set<String> files = Set.of("start4.elf", "fixup4.dat", "lab.img");

        assertThat(missing("pi4", files)).containsExactly("kernel8.img or kernel7l.img");
        assertThat(missing("pi4", files, "kernel=lab.img")).isEmpty();
        assertThat(missing("pi4", files, "[pi5]", "kernel=lab.img")).containsExactly("kernel8.img or kernel7l.img");
        assertThat(missing("pi4", Set.of("start4.elf", "fixup4.dat", "kernel8.img"), "kernel=lab.img"))
                .containsExactly("lab.img");
    }

    @Test
    void aKernelThatMayBeNamedLeavesTheDefaultPossible() {
        assertThat(missing("pi4", Set.of("start4.elf", "fixup4.dat", "kernel8.img"), "[gpio4=1]", "kernel=lab.img"))
                .isEmpty();
    }

    @Test
    void aKernelInAnotherFolderIsTakenToBeThere() {
        assertThat(missing("pi4", Set.of("start4.elf", "fixup4.dat"), "os_prefix=lab/")).isEmpty();
        assertThat(missing("pi4", Set.of("start4.elf", "fixup4.dat"), "kernel=/lab/robots.img")).isEmpty();
    }

    @Test
    void deviceTreesNarrowWhereAKnownOneIsThere() {
        Set<String> files = Set.of("start4.elf", "fixup4.dat", "kernel7l.img", "bcm2711-rpi-4-b.dtb");

        assertThat(bootable(files)).containsExactly("pi4");
        assertThat(missing("cm4", files)).containsExactly("bcm2711-rpi-cm4.dtb");
        assertThat(missing("cm4", files, "device_tree=robots.dtb")).isEmpty();
    }

    @Test
    void deviceTreesWithOtherNamesNarrowNothing() {
        assertThat(bootable(Set.of("start4.elf", "fixup4.dat", "kernel7l.img", "bcm2711-pi4.dtb"))).hasSize(4);
    }

    private List<String> bootable(Set<String> files) {
        return TABLES.boards().all().stream().map(Board::id).filter(id -> missing(id, files).isEmpty()).toList();
    }

    private List<String> missing(String boardId, Set<String> files, String... config) {
        return boards.missing(files, rule("").on(board(boardId)).reads(config).resolve());
    }
}
