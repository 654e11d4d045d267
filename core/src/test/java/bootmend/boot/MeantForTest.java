package bootmend.boot;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.fixtures.ChainCard;
import bootmend.fixtures.ChainFiles;
import bootmend.tuning.resolve.BoardFacts;
import java.io.IOException;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Which boards a card is taken to be meant for when nobody names one; common practice, no source. */
class MeantForTest {

    private static BootDiagnosis diagnosis(ChainCard card) throws IOException {
        return OpenedCard.diagnosis(card.build(), BoardFacts.none());
    }

    @Test
    void aFullCardIsMeantForEveryBoardAndBootsThemAll() throws IOException {
        BootDiagnosis diagnosis = diagnosis(ChainCard.full());
        assertThat(diagnosis.boardIds()).hasSize(18);
        assertThat(diagnosis.boards())
                .allSatisfy(board ->
                        assertThat(board.chain().verdict()).as(board.board()).isEqualTo(new Verdict.Boots(List.of())));
        assertThat(diagnosis.notTold()).hasSize(2);
    }

    @Test
    void aMissingStartFileDoesNotDropItsFamily() throws IOException {
        BootDiagnosis diagnosis = diagnosis(ChainCard.full().remove("start4.elf"));
        assertThat(diagnosis.boardIds()).contains("pi4", "pi400", "cm4", "cm4s");
        assertThat(verdict(diagnosis, "pi4")).isEqualTo("stops");
        assertThat(verdict(diagnosis, "pi3")).isEqualTo("boots");
    }

    @Test
    void missingKernelAndStartFilesDoNotEither() throws IOException {
        BootDiagnosis diagnosis = diagnosis(ChainCard.full().without("(start|fixup|kernel).*"));
        assertThat(diagnosis.boardIds()).hasSize(18);
        assertThat(diagnosis.anyBoots()).isFalse();
    }

    @Test
    void aMissingDeviceTreeIsToldByItsKin() throws IOException {
        assertThat(verdict(diagnosis(ChainCard.full().remove("bcm2711-rpi-4-b.dtb")), "pi4"))
                .isEqualTo("stops");
        assertThat(verdict(diagnosis(ChainCard.full().remove("bcm2708-rpi-zero.dtb")), "pi0"))
                .isEqualTo("stops");
        ChainCard oneChip = ChainCard.full().keep("(start4|fixup4|bcm2711|kernel8|config|cmdline).*");
        assertThat(verdict(diagnosis(oneChip.remove("bcm2711-rpi-4-b.dtb")), "pi4"))
                .isEqualTo("stops");
    }

    @Test
    void anOlderBuildIsNotMeantForBoardsThatCameLater() throws IOException {
        ChainCard older = ChainCard.full()
                .remove("bcm2711-rpi-cm4s.dtb", "bcm2712-rpi-500.dtb", "bcm2710-rpi-cm0.dtb")
                .without("bcm2712-rpi-cm5.*");
        assertThat(diagnosis(older).boardIds())
                .doesNotContain("cm4s", "pi500", "cm5", "cm0")
                .contains("pi4", "pi5");
    }

    @Test
    void a64BitBuildIsNotMeantForBoardsThatCannotRunIt() throws IOException {
        ChainCard build = ChainCard.full().remove("kernel.img", "kernel7.img", "kernel7l.img");
        assertThat(diagnosis(build).boardIds())
                .doesNotContain("pi0", "pi0w", "pi1", "cm1")
                .contains("pi02", "pi3", "pi4", "pi5");
    }

    @Test
    void aCardForOneBoardIsMeantForThatBoard() throws IOException {
        ChainCard one =
                ChainCard.full().keep("start4.elf|fixup4.dat|bcm2711-rpi-cm4.dtb|kernel8.img|config.txt|cmdline.txt");
        assertThat(diagnosis(one).boardIds()).containsExactly("cm4");
    }

    @Test
    void withoutDeviceTreesFirmwareAndKernelTell() throws IOException {
        ChainCard old = ChainCard.full().keep("bootcode.bin|start.elf|fixup.dat|kernel.img|config.txt|cmdline.txt");
        assertThat(diagnosis(old).boardIds()).containsExactly("pi0", "pi0w", "pi1", "cm1");
        ChainCard startOnly = ChainCard.full().keep("bootcode.bin|start.elf|fixup.dat|cmdline.txt");
        assertThat(diagnosis(startOnly).meantForNone()).isTrue();
        ChainCard named = startOnly.config("kernel=zImage\n").put("zImage", ChainFiles.kernel32(6000));
        assertThat(diagnosis(named).boardIds()).contains("pi0", "pi2", "pi3").doesNotContain("pi4");
        ChainCard own = ChainCard.full()
                .keep("start4.elf|fixup4.dat|kernel8.img|cmdline.txt")
                .config("device_tree=lab.dtb\n")
                .put("lab.dtb", ChainFiles.deviceTree("lab"));
        assertThat(verdict(diagnosis(own), "pi4")).isEqualTo("boots");
    }

    @Test
    void whatStandsBehindAPrefixOrInARamdiskTellsToo() throws IOException {
        ChainCard moved = ChainCard.full()
                .moveAllInto("one", "(bootcode|start|fixup|config).*")
                .config("os_prefix=one/\n");
        assertThat(diagnosis(moved).boardIds()).contains("pi3", "pi4", "pi5");
        var inside = new TreeMap<>(ChainCard.everyBoard());
        inside.keySet().removeIf(path -> !path.matches("start4.elf|fixup4.dat|bcm2711.*|kernel8.img|c.*txt"));
        ChainCard ramdisk = new ChainCard().config("boot_ramdisk=1\n").put("boot.img", ChainCard.ramdisk(inside));
        BootDiagnosis found = diagnosis(ramdisk);
        assertThat(found.boardIds()).containsExactly("pi4", "pi400", "cm4", "cm4s");
        assertThat(verdict(found, "pi4")).isEqualTo("boots");
    }

    @Test
    void aCardThatTellsNothingIsPutToEveryBoard() throws IOException {
        BootDiagnosis diagnosis = diagnosis(new ChainCard().config("arm_freq=1000\n"));
        assertThat(diagnosis.meantForNone()).isTrue();
        assertThat(diagnosis.boardIds()).hasSize(18);
        assertThat(diagnosis.anyBoots()).isFalse();
    }

    private static String verdict(BootDiagnosis diagnosis, String board) {
        return diagnosis.boards().stream()
                .filter(each -> each.board().equals(board))
                .findFirst()
                .orElseThrow(() -> new AssertionError(board + " is not among " + diagnosis.boardIds()))
                .chain()
                .verdict()
                .word();
    }
}
