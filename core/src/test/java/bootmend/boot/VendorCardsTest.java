package bootmend.boot;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.fixtures.ChainCard;
import bootmend.fixtures.ChainFiles;
import bootmend.tuning.resolve.BoardFacts;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * Cards as builds of several years and kinds leave them, untouched: none may be called broken for a board that it is meant
 * for. What stands on each is from memory where no source is named.
 */
class VendorCardsTest {

    private static final String PI1 = "bootcode.bin|(start|fixup)(_cd|_x)?\\.(elf|dat)|kernel\\.img|bcm2708-rpi-b\\.dtb"
            + "|bcm2708-rpi-b-plus\\.dtb|bcm2708-rpi-cm\\.dtb";

    private static void boots(ChainCard card, String... boards) throws IOException {
        BootDiagnosis found = OpenedCard.diagnosis(card.build(), BoardFacts.none());
        for (BoardDiagnosis board : found.boards()) {
            assertThat(board.chain().verdict()).as(board.board()).isInstanceOf(Verdict.Boots.class);
        }
        assertThat(new TreeSet<>(found.boardIds())).isEqualTo(new TreeSet<>(List.of(boards)));
        assertThat(found.meantForNone()).isFalse();
    }

    @Test
    void before2016() throws IOException {
        boots(
                ChainCard.full()
                        .keep(PI1 + "|kernel7\\.img|bcm2709-rpi-2-b\\.dtb|bcm2710-rpi-2-b\\.dtb|overlays/.*")
                        .config("#uncomment to overclock the arm. 700 MHz is the default.\n#arm_freq=800\n")
                        .put(
                                "cmdline.txt",
                                "dwc_otg.lpm_enable=0 console=tty1 root=/dev/mmcblk0p2 rootfstype=ext4 elevator=deadline"
                                        + " rootwait\n"),
                "pi1",
                "cm1",
                "pi2");
    }

    @Test
    void withPi4AndFourKernels() throws IOException {
        boots(
                ChainCard.full()
                        .without(
                                "bcm2712.*|kernel_2712.img|bcm2711-rpi-(400|cm4|cm4s)\\.dtb|bcm2710-rpi-(cm0|zero-2-w)\\.dtb")
                        .config("dtparam=audio=on\n[pi4]\ndtoverlay=vc4-kms-v3d\nmax_framebuffers=2\n[all]\n"),
                "pi0",
                "pi0w",
                "pi1",
                "cm1",
                "pi2",
                "pi3",
                "pi3+",
                "cm3",
                "cm3+",
                "pi4");
    }

    /** Source: image build of the maker's system, stage1 config.txt and cmdline.txt, commit 314262cb. */
    @Test
    void of2026() throws IOException {
        boots(
                ChainCard.full()
                        .put("initramfs", ChainFiles.initramfs())
                        .put("initramfs7", ChainFiles.initramfs())
                        .put("initramfs7l", ChainFiles.initramfs())
                        .put("initramfs8", ChainFiles.initramfs())
                        .put("initramfs_2712", ChainFiles.initramfs())
                        .config("dtparam=audio=on\ncamera_auto_detect=1\ndisplay_auto_detect=1\nauto_initramfs=1\n"
                                + "dtoverlay=vc4-kms-v3d\nmax_framebuffers=2\ndisable_fw_kms_setup=1\narm_64bit=1\n"
                                + "disable_overscan=1\narm_boost=1\n[cm4]\notg_mode=1\n[cm5]\ndtoverlay=dwc2,dr_mode=host\n"
                                + "[all]\n")
                        .remove("kernel.img", "kernel7.img", "kernel7l.img")
                        .without("bcm2708.*|bcm2709.*|bcm2710-rpi-2-b.dtb"),
                "pi02",
                "cm0",
                "pi3",
                "pi3+",
                "cm3",
                "cm3+",
                "pi4",
                "pi400",
                "cm4",
                "cm4s",
                "pi5",
                "pi500",
                "cm5");
    }

    @Test
    void aDistributorsBuildWithUpstreamDeviceTrees() throws IOException {
        ChainCard card = new ChainCard()
                .put("bootcode.bin", ChainFiles.noise("b", 5000))
                .put("start.elf", ChainFiles.startFile("x"))
                .put("fixup.dat", ChainFiles.noise("f", 700))
                .put("start4.elf", ChainFiles.startFile("y"))
                .put("fixup4.dat", ChainFiles.noise("g", 700))
                .put("vmlinuz-6.1.0-arm64", ChainFiles.kernel64(8192))
                .put("initrd.img-6.1.0-arm64", ChainFiles.initramfs())
                .config("arm_64bit=1\nenable_uart=1\nupstream_kernel=1\nkernel=vmlinuz-6.1.0-arm64\n"
                        + "initramfs initrd.img-6.1.0-arm64\n")
                .put("cmdline.txt", "console=tty0 root=LABEL=labroot rw fsck.repair=yes net.ifnames=0 rootwait\n");
        for (String tree : List.of("3-b", "3-b-plus", "3-a-plus", "cm3-io3", "zero-2-w")) {
            card.put("bcm2837-rpi-" + tree + ".dtb", ChainFiles.deviceTree(tree));
        }
        for (String tree : List.of("4-b", "400", "cm4-io")) {
            card.put("bcm2711-rpi-" + tree + ".dtb", ChainFiles.deviceTree(tree));
        }
        boots(card, "pi3", "pi3+", "cm3", "cm3+", "pi02", "pi4", "pi400", "cm4");
    }

    @Test
    void aDistributorsBuildWithALabelledRootAndAnInclude() throws IOException {
        boots(
                ChainCard.full()
                        .without("kernel.*|bcm2708.*|bcm2709.*|bcm2710-rpi-2-b.dtb")
                        .put("vmlinuz", ChainFiles.gzippedKernel64(9000 / 512 * 512))
                        .put("initrd.img", ChainFiles.initramfs())
                        .config("[all]\nkernel=vmlinuz\ncmdline=cmdline.txt\ninitramfs initrd.img followkernel\n"
                                + "arm_64bit=1\n# Settings of your own go into usercfg.txt\ninclude usercfg.txt\n")
                        .put(
                                "cmdline.txt",
                                "console=tty1 root=LABEL=labroot rootfstype=ext4 rootwait fixrtc quiet splash\n"),
                "pi02",
                "cm0",
                "pi3",
                "pi3+",
                "cm3",
                "cm3+",
                "pi4",
                "pi400",
                "cm4",
                "cm4s",
                "pi5",
                "pi500",
                "cm5");
    }

    @Test
    void aSystemThatLivesInMemory() throws IOException {
        boots(
                ChainCard.full()
                        .noTable()
                        .keep("(start4|fixup4).*|bcm2711.*|overlays/.*")
                        .put("boot/vmlinuz", ChainFiles.kernel64(8192))
                        .put("boot/initramfs", ChainFiles.initramfs())
                        .config("kernel=boot/vmlinuz\ninitramfs boot/initramfs\narm_64bit=1\ninclude usercfg.txt\n")
                        .put("cmdline.txt", "modules=loop,squashfs,sd-mod,usb-storage quiet console=tty1\n"),
                "pi4",
                "pi400",
                "cm4",
                "cm4s");
    }

    @Test
    void firmwareInPlaceOfTheStub() throws IOException {
        boots(
                ChainCard.full()
                        .noRoot()
                        .keep("start4.elf|fixup4.dat|bcm2711-rpi-(4-b|400|cm4)\\.dtb|overlays/.*")
                        .put("STUB.fd", ChainFiles.noise("firmware", 200_000))
                        .config("arm_64bit=1\nenable_uart=1\narmstub=STUB.fd\ndevice_tree_address=0x1f0000\n"),
                "pi4",
                "pi400",
                "cm4");
    }

    @Test
    void loadersForEachBoardInSections() throws IOException {
        boots(
                ChainCard.full()
                        .keep("bootcode.bin|start4?.elf|fixup4?.dat|bcm2710-rpi-3.*|bcm2711-rpi-4-b.dtb")
                        .bootType(0x06)
                        .put("loader3.bin", ChainFiles.loader(true))
                        .put("loader4.bin", ChainFiles.loader(true))
                        .config("arm_64bit=1\n[pi3]\nkernel=loader3.bin\n[pi4]\nkernel=loader4.bin\n[all]\n"),
                "pi3",
                "pi3+",
                "pi4");
    }

    @Test
    void aSmallBuildForOneBoard() throws IOException {
        boots(
                ChainCard.full()
                        .keep("bootcode.bin|start.elf|fixup.dat|bcm2708-rpi-zero(-w)?.dtb|overlays/.*")
                        .put("zImage", ChainFiles.kernel32(7000))
                        .config(
                                "start_file=start.elf\nfixup_file=fixup.dat\nkernel=zImage\ndisable_overscan=1\ngpu_mem=100\n")
                        .put("cmdline.txt", "root=/dev/mmcblk0p2 rootwait console=tty1 console=ttyAMA0,115200\n"),
                "pi0",
                "pi0w");
    }

    @Test
    void anEarlyFileSystemInsideTheKernelIsNotCalledBroken() throws IOException {
        ChainCard card = ChainCard.full().put("cmdline.txt", "boot=UUID=1504-2240 disk=LABEL=labroot quiet\n");
        BootDiagnosis found = OpenedCard.diagnosis(card.build(), BoardFacts.none());
        assertThat(found.boards())
                .allSatisfy(board -> assertThat(board.chain().verdict().word()).isEqualTo("unknown"));
    }

    @Test
    void aRescueSystemOfItsOwnIsNotCalledBroken() throws IOException {
        ChainCard card = new ChainCard()
                .put("bootcode.bin", ChainFiles.noise("b", 5000))
                .put("recovery.elf", ChainFiles.startFile("r"))
                .put("recovery.img", ChainFiles.kernel32(6000))
                .put("recovery7.img", ChainFiles.kernel32(6000))
                .put("recovery.cmdline", "quiet\n")
                .putAll(Map.of("bcm2709-rpi-2-b.dtb", ChainFiles.deviceTree("x")));
        BootDiagnosis found = OpenedCard.diagnosis(card.build(), BoardFacts.none());
        assertThat(found.boards().get(0).chain().link(LinkKind.FIRMWARE).state())
                .isEqualTo(LinkState.UNKNOWN);
        assertThat(found.boards().get(0).chain().link(LinkKind.KERNEL).state()).isEqualTo(LinkState.UNKNOWN);
    }
}
