package bootmend.boot;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.fixtures.ChainCard;
import bootmend.fixtures.ChainFiles;
import bootmend.tuning.Revision;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/**
 * Card layouts written down from published documentation, each with the verdict that the documentation implies. The
 * documents are those of the board maker's documentation repository, folder documentation/asciidoc/computers, unless they
 * say otherwise.
 */
class LayoutTableTest {

    private static final String BOOT = "config_txt/boot.adoc, commit 0456a78c";
    private static final String OLD_BOOT = "legacy_config_txt/boot.adoc, commit 32f78cdf";
    private static final String FOLDER = "configuration/boot_folder.adoc, commit 044dfa24";
    private static final String LEGACY_FLOW = "bootflow-legacy.adoc, commit 27d24616";
    private static final String EEPROM = "boot-eeprom.adoc, commit 01d01d3f";
    private static final String BOOTLOADER = "eeprom-bootloader.adoc, commit 0456a78c";
    private static final String AUTOBOOT = "config_txt/autoboot.adoc, commit 04d84a86";
    private static final String TREES = "configuration/device-tree.adoc, commit 042aa6fd";
    private static final String LINE = "configuration/kernel-command-line-config.adoc, commit 14c113a6";
    private static final String ROOT_NAMES =
            "the kernel, block/early-lookup.c, commit 017fb83e (comment on root names)";
    private static final String MOUNTS = "the kernel, init/do_mounts.c, commit 010e85f9";
    private static final String EXT4 = "the kernel, Documentation/filesystems/ext4/super.rst, commit 14e77332";
    private static final String BUILD = "image build of the maker's system, stage1 and export-image, commit 314262cb";
    private static final String SECURE = "docs/secure-boot.md, commit 87d6e032";
    private static final String INCLUDES = "config_txt/what_is_config_txt.adoc, commits 57ad5821 and 0ff39f51";
    private static final String ELF = "Executable and Linking Format specification 1.2, book I";
    private static final String GZIP = "RFC 1952, section 2.3.1";
    private static final String DTSPEC = "Devicetree Specification 0.4, section 5.2";
    private static final String ARM64 = "the kernel's arm64 boot protocol page";
    private static final String FAT = "FAT: General Overview of On-Disk Format, version 1.03";
    private static final String PRACTICE = "common practice, no source";

    private static final String[] BEFORE_PI4 = {
        "pi0", "pi0w", "pi02", "cm0", "pi1", "cm1", "pi2", "pi3", "pi3+", "cm3", "cm3+"
    };
    private static final String[] PI4 = {"pi4", "pi400", "cm4", "cm4s"};
    private static final String[] PI5 = {"pi5", "pi500", "cm5"};
    private static final String[] ALL = {
        "pi0", "pi0w", "pi02", "cm0", "pi1", "cm1", "pi2", "pi3", "pi3+", "cm3", "cm3+", "pi4", "pi400", "cm4", "cm4s",
        "pi5", "pi500", "cm5"
    };

    private final TuningTables tables = TuningTables.load();
    private final List<Row> rows = new ArrayList<>();

    /**
     * One layout.
     *
     * @param link where the board stops or what it hangs on; empty where it boots
     */
    private record Row(
            String name,
            String source,
            Supplier<ChainCard> card,
            String verdict,
            Optional<LinkKind> link,
            Optional<String> revision,
            List<String> boards) {}

    private void boots(String name, String source, Supplier<ChainCard> card, String... boards) {
        rows.add(new Row(name, source, card, "boots", Optional.empty(), Optional.empty(), List.of(boards)));
    }

    private void stops(String name, String source, LinkKind link, Supplier<ChainCard> card, String... boards) {
        rows.add(new Row(name, source, card, "stops", Optional.of(link), Optional.empty(), List.of(boards)));
    }

    private void unknown(String name, String source, LinkKind link, Supplier<ChainCard> card, String... boards) {
        rows.add(new Row(name, source, card, "unknown", Optional.of(link), Optional.empty(), List.of(boards)));
    }

    private void revised(
            String name, String source, String verdict, LinkKind link, String code, Supplier<ChainCard> card) {
        rows.add(new Row(
                name,
                source,
                card,
                verdict,
                verdict.equals("boots") ? Optional.empty() : Optional.of(link),
                Optional.of(code),
                List.of("")));
    }

    private static ChainCard full() {
        return ChainCard.full();
    }

    /** Its own files alone, as a build for one board family lays them out. */
    private static ChainCard only(String pattern) {
        return full().keep(pattern + "|config\\.txt|cmdline\\.txt|overlays/.*");
    }

    private static ChainCard pi5() {
        return only("bcm2712.*|kernel_2712\\.img");
    }

    private static ChainCard pi4() {
        return only("start4.*|fixup4.*|bcm2711.*|kernel8\\.img");
    }

    private static ChainCard pi3() {
        return only("bootcode\\.bin|start.*|fixup.*|bcm2710.*|kernel7\\.img");
    }

    private static ChainCard settings(String text) {
        return full().config(text);
    }

    private void healthy() {
        boots("published build, every board", FOLDER + "; " + BUILD, LayoutTableTest::full, ALL);
        boots("the same in a GPT", BOOTLOADER, () -> full().gpt().rootName(gptId(2)), "pi3", "pi4", "pi5");
        boots("FAT with type 0x0E", LEGACY_FLOW, () -> full().bootType(0x0E), "pi3", "pi4", "pi5");
        boots("pi5 alone: no start file, no bootcode.bin", BOOT, LayoutTableTest::pi5, PI5);
        boots("pi5 with kernel8.img alone", BOOT, () -> only("bcm2712.*|kernel8\\.img"), PI5);
        boots("pi4 family alone: no bootcode.bin", FOLDER, LayoutTableTest::pi4, PI4);
        boots("pi3 family alone", FOLDER, LayoutTableTest::pi3, "pi02", "cm0", "pi3", "pi3+", "cm3", "cm3+");
        boots(
                "pi1 family alone",
                FOLDER,
                () -> only("bootcode\\.bin|start.*|fixup.*|bcm2708.*|kernel\\.img"),
                "pi0",
                "pi0w",
                "pi1",
                "cm1");
        boots("no config file before pi5", INCLUDES, () -> full().remove("config.txt"), "pi1", "pi3", "pi4");
        boots(
                "64-bit kernel alone on pi3: arm_64bit sets itself",
                BOOT,
                () -> only("bootcode\\.bin|start.*|fixup.*|bcm2710.*|kernel8\\.img"),
                "pi3",
                "pi3+",
                "pi02");
        boots("arm_64bit=1 on pi3", BOOT, () -> settings("arm_64bit=1\n"), "pi3", "pi02");
        boots("arm_64bit=0 on pi4 with kernel7l.img", BOOT, () -> settings("arm_64bit=0\n"), "pi4", "cm4");
        boots("64-bit kernel not packed", ARM64, () -> full().put("kernel8.img", ChainFiles.kernel64(8192)), "pi4");
        boots(
                "kernel= with a name ending in 8.img",
                BOOT,
                () -> settings("kernel=lab8.img\n").put("lab8.img", ChainFiles.gzippedKernel64(8192)),
                "pi3",
                "pi4",
                "pi5");
        boots(
                "kernel= of another name with arm_64bit=1",
                "firmware repository, issue 1193",
                () -> settings("arm_64bit=1\nkernel=Image\n").put("Image", ChainFiles.kernel64(8192)),
                "pi3",
                "pi4");
        boots(
                "kernel=zImage on 32-bit boards",
                BOOT,
                () -> settings("kernel=zImage\n").put("zImage", ChainFiles.kernel32(7000)),
                "pi0",
                "pi2",
                "pi3");
        boots("start_x=1", OLD_BOOT, () -> settings("start_x=1\ngpu_mem=128\n"), "pi1", "pi3", "pi4");
        boots("gpu_mem=16: the cut-down pair", BOOT, () -> settings("gpu_mem=16\n"), "pi1", "pi3", "pi4");
        boots("start_debug=1", OLD_BOOT, () -> settings("start_debug=1\n"), "pi3", "pi4");
        boots(
                "start_file and fixup_file of one variant",
                BOOT,
                () -> settings("start_file=start_x.elf\nfixup_file=fixup_x.dat\n"),
                "pi3");
        boots(
                "os_prefix to a folder with its own set",
                BOOT,
                () -> full().moveAllInto("one", "(bootcode|start|fixup|config|overlays).*")
                        .config("os_prefix=one/\n"),
                "pi3",
                "pi4",
                "pi5");
        boots("two sets of boot files, one chosen", BOOT, LayoutTableTest::twoSets, "pi3", "pi4", "pi5");
        boots(
                "os_prefix without kernel behind it is left out",
                BOOT,
                () -> settings("os_prefix=gone/\n"),
                "pi3",
                "pi4");
        boots(
                "overlay_prefix and README behind os_prefix",
                BOOT,
                () -> full().moveAllInto("one", "(bootcode|start|fixup|config).*")
                        .config("os_prefix=one/\ndtoverlay=disable-bt\n"),
                "pi3",
                "pi4");
        boots("upstream_kernel=1 with a folder of its own", OLD_BOOT, LayoutTableTest::upstream, "pi3", "pi4");
        boots("upstream_kernel=1 without one", OLD_BOOT, () -> settings("upstream_kernel=1\n"), "pi3");
        boots("boot ramdisk", BOOT + "; " + SECURE, LayoutTableTest::ramdisk, "pi4", "pi5");
        boots(
                "second-stage loader in 32-bit code",
                PRACTICE,
                () -> settings("kernel=loader.bin\n")
                        .put("loader.bin", ChainFiles.loader(false))
                        .remove("cmdline.txt"),
                "pi2",
                "pi3");
        boots(
                "second-stage loader in 64-bit code",
                PRACTICE,
                () -> settings("arm_64bit=1\nkernel=loader.bin\n")
                        .put("loader.bin", ChainFiles.loader(true))
                        .remove("cmdline.txt")
                        .noRoot(),
                "pi3",
                "pi4",
                "pi5");
        boots(
                "armstub=",
                BOOT,
                () -> settings("armstub=stub8.bin\narm_64bit=1\n").put("stub8.bin", ChainFiles.noise("stub", 900)),
                "pi3",
                "pi4");
        boots(
                "an include that is not there",
                INCLUDES,
                () -> settings("# put your own lines into usercfg.txt\ninclude usercfg.txt\n"),
                "pi3",
                "pi4",
                "pi5");
        boots(
                "settings in an included file",
                INCLUDES,
                () -> settings("include more.txt\n")
                        .put("more.txt", "kernel=other.img\narm_64bit=0\n")
                        .put("other.img", ChainFiles.kernel32(6000)),
                "pi2",
                "pi3");
        boots(
                "initramfs beside its kernel",
                BOOT,
                () -> full().put("initramfs8", ChainFiles.initramfs())
                        .put("initramfs_2712", ChainFiles.initramfs())
                        .put("initramfs7", ChainFiles.initramfs()),
                "pi3",
                "pi4",
                "pi5");
        boots("auto_initramfs=1 without a file", BUILD, () -> settings("auto_initramfs=1\n"), "pi3", "pi4", "pi5");
        boots(
                "initramfs line, LABEL= and UUID=",
                ROOT_NAMES + "; " + BOOT,
                () -> settings("initramfs early.gz followkernel\n")
                        .put("early.gz", ChainFiles.initramfs())
                        .rootName("LABEL=" + ChainCard.ROOT_LABEL),
                "pi3",
                "pi4");
        boots(
                "ramfsfile=, UUID=",
                ROOT_NAMES + "; " + BOOT,
                () -> settings("ramfsfile=early.gz\nramfsaddr=-1\n")
                        .put("early.gz", ChainFiles.initramfs())
                        .rootName("UUID=" + ChainCard.ROOT_ID),
                "pi3",
                "pi4");
        boots(
                "uncompressed early file system before a packed one",
                "the kernel's initramfs buffer format page",
                () -> settings("initramfs a,b followkernel\n")
                        .put("a", ChainFiles.cpio(Map.of("kernel/firmware", new byte[100])))
                        .put("b", ChainFiles.initramfs()),
                "pi4");
        boots("root=/dev/mmcblk0p2", ROOT_NAMES, () -> full().rootName("/dev/mmcblk0p2"), ALL);
        boots("root=b302", ROOT_NAMES, () -> full().rootName("b302"), "pi3");
        boots("root=179:2", ROOT_NAMES, () -> full().rootName("179:2"), "pi3");
        boots(
                "root=PARTUUID with PARTNROFF",
                ROOT_NAMES,
                () -> full().rootName("PARTUUID=5c01ab07-01/PARTNROFF=1"),
                "pi3");
        boots("root=PARTUUID in capitals", ROOT_NAMES, () -> full().rootName("PARTUUID=5C01AB07-02"), "pi3");
        boots("root=PARTLABEL in a GPT", ROOT_NAMES, () -> full().gpt().rootName("PARTLABEL=system"), "pi4");
        boots(
                "root=/dev/nfs",
                ROOT_NAMES,
                () -> full().noRoot().put("cmdline.txt", "root=/dev/nfs nfsroot=10.0.0.2:/lab ip=dhcp rw\n"),
                "pi3");
        boots(
                "cmdline= names another file",
                BOOT,
                () -> settings("cmdline=other.txt\n").rename("cmdline.txt", "other.txt"),
                "pi3",
                "pi4");
        boots("A/B card, ordinary start", AUTOBOOT, LayoutTableTest::twoPartitions, "pi4", "pi5");
        boots(
                "an overlay that is missing is passed over",
                TREES,
                () -> settings("dtoverlay=none-such\n"),
                "pi3",
                "pi5");
        boots("update of the boot memory waits, whole", EEPROM, () -> update("pieeprom.upd", true, true), "pi4");
        boots(
                "update files for the other chip",
                "release notes of firmware-2712, entry 2023-09-13",
                () -> update("pieeprom.bin", true, true),
                "pi5");
        boots(
                "rescue files on boards that do not look for them",
                EEPROM,
                () -> update("pieeprom.bin", true, true),
                "pi3");
        boots("used-up recovery.000", EEPROM, () -> full().put("recovery.000", new byte[100]), "pi4", "pi5");
        boots("self-update: pieeprom.upd and .sig", BOOTLOADER, () -> update("pieeprom.upd", false, true), "pi4");
        boots(
                "pieeprom.upd without .sig nor recovery.bin is not taken",
                BOOTLOADER,
                () -> update("pieeprom.upd", false, false),
                "pi4");
        revised(
                "pi2 with BCM2837 and its own device tree alone",
                TREES,
                "boots",
                LinkKind.DEVICE_TREE,
                "a22042",
                () -> full().remove("bcm2709-rpi-2-b.dtb"));
        revised(
                "pi1 B+ and its own device tree alone",
                TREES,
                "boots",
                LinkKind.DEVICE_TREE,
                "900032",
                () -> full().remove("bcm2708-rpi-b.dtb", "bcm2708-rpi-b-rev1.dtb"));
        boots(
                "device_tree= names one",
                TREES,
                () -> settings("device_tree=lab.dtb\n")
                        .put("lab.dtb", ChainFiles.deviceTree("lab"))
                        .without("bcm.*"),
                "pi3",
                "pi4",
                "pi5");
    }

    private void broken() {
        stops("start4.elf missing", FOLDER, LinkKind.FIRMWARE, () -> full().remove("start4.elf"), PI4);
        stops("start.elf missing", FOLDER, LinkKind.FIRMWARE, () -> full().remove("start.elf"), BEFORE_PI4);
        stops("fixup4.dat missing", BOOT, LinkKind.FIRMWARE, () -> full().remove("fixup4.dat"), PI4);
        stops("bootcode.bin missing", LEGACY_FLOW, LinkKind.FIRMWARE, () -> full().remove("bootcode.bin"), BEFORE_PI4);
        stops(
                "bootcode.bin without a byte",
                LEGACY_FLOW,
                LinkKind.FIRMWARE,
                () -> full().put("bootcode.bin", new byte[0]),
                "pi3");
        stops("start file cut to 4 kB", ELF, LinkKind.FIRMWARE, () -> full().cut("start4.elf", 4096), PI4);
        stops(
                "start file's sections past its end",
                ELF,
                LinkKind.FIRMWARE,
                () -> full().cut("start.elf", full().get("start.elf").length - 40),
                "pi3");
        stops(
                "start file is a text",
                ELF,
                LinkKind.FIRMWARE,
                () -> full().put("start4.elf", "404: not found\n"),
                "pi4");
        stops("pair of two variants", BOOT, LinkKind.FIRMWARE, () -> settings("start_file=start_x.elf\n"), "pi3");
        stops(
                "start_x=1 without its pair",
                OLD_BOOT,
                LinkKind.FIRMWARE,
                () -> settings("start_x=1\n").remove("start_x.elf"),
                "pi3");
        stops(
                "gpu_mem=16 without the cut-down pair",
                BOOT,
                LinkKind.FIRMWARE,
                () -> settings("gpu_mem=16\n").remove("start4cd.elf"),
                "pi4");
        stops(
                "start_file= in an include does not count",
                INCLUDES,
                LinkKind.FIRMWARE,
                () -> settings("include more.txt\n")
                        .put("more.txt", "start_file=lab.elf\nfixup_file=lab.dat\n")
                        .rename("start.elf", "lab.elf")
                        .rename("fixup.dat", "lab.dat"),
                "pi3");
        stops("config.txt missing on pi5", BOOT, LinkKind.CONFIG, () -> full().remove("config.txt"), PI5);
        stops("config.txt.txt on pi5", BOOT, LinkKind.CONFIG, () -> full().rename("config.txt", "config.txt.txt"), PI5);
        stops(
                "kernel8.img missing, pi4",
                BOOT,
                LinkKind.KERNEL,
                () -> full().remove("kernel8.img", "kernel7l.img"),
                PI4);
        stops("kernel.img missing", BOOT, LinkKind.KERNEL, () -> full().remove("kernel.img"), "pi0", "pi1");
        stops("no kernel for pi5", BOOT, LinkKind.KERNEL, () -> full().remove("kernel_2712.img", "kernel8.img"), PI5);
        stops(
                "arm_64bit=0 on pi4 without kernel7l.img",
                "kernel repository, issue 7627, 2026",
                LinkKind.KERNEL,
                () -> settings("arm_64bit=0\n").remove("kernel7l.img"),
                "pi4");
        stops("kernel= names what is not there", BOOT, LinkKind.KERNEL, () -> settings("kernel=lab.img\n"), ALL);
        stops(
                "gzip kernel cut in half",
                GZIP,
                LinkKind.KERNEL,
                () -> full().cut("kernel8.img", full().get("kernel8.img").length / 2),
                PI4);
        stops("gzip kernel with one wrong byte", GZIP, LinkKind.KERNEL, () -> full().flip("kernel8.img"), PI4);
        stops(
                "64-bit kernel cut, by its PE sections",
                ARM64,
                LinkKind.KERNEL,
                () -> full().put("kernel8.img", ChainFiles.kernel64(8192)).cut("kernel8.img", 8000),
                "pi4");
        stops("32-bit kernel cut", PRACTICE, LinkKind.KERNEL, () -> full().cut("kernel7.img", 5000), "pi3");
        stops(
                "kernel filled with zeros",
                PRACTICE,
                LinkKind.KERNEL,
                () -> full().put("kernel8.img", new byte[20_000]),
                "pi4");
        stops("kernel without a byte", PRACTICE, LinkKind.KERNEL, () -> full().put("kernel.img", new byte[0]), "pi1");
        stops(
                "64-bit kernel of another name without arm_64bit=1",
                "firmware repository, issue 1193",
                LinkKind.KERNEL,
                () -> settings("kernel=Image\n").put("Image", ChainFiles.kernel64(8192)),
                "pi3");
        stops(
                "64-bit kernel on a 32-bit board",
                BOOT,
                LinkKind.KERNEL,
                () -> settings("kernel=kernel8.img\n"),
                "pi1",
                "pi0");
        stops(
                "32-bit kernel in the place of the 64-bit one",
                BOOT,
                LinkKind.KERNEL,
                () -> full().put("kernel8.img", ChainFiles.kernel32(6000)),
                PI4);
        stops(
                "no device tree for the board",
                TREES,
                LinkKind.DEVICE_TREE,
                () -> full().remove("bcm2711-rpi-4-b.dtb"),
                "pi4");
        stops(
                "device trees of other boards alone",
                TREES,
                LinkKind.DEVICE_TREE,
                () -> full().without("bcm2712.*"),
                PI5);
        stops("device tree cut", DTSPEC, LinkKind.DEVICE_TREE, () -> full().cut("bcm2711-rpi-4-b.dtb", 700), "pi4");
        stops(
                "device tree overwritten",
                DTSPEC,
                LinkKind.DEVICE_TREE,
                () -> full().put("bcm2710-rpi-3-b.dtb", ChainFiles.noise("x", 1500)),
                "pi3");
        stops(
                "device_tree= names what is not there",
                TREES,
                LinkKind.DEVICE_TREE,
                () -> settings("device_tree=lab.dtb\n"),
                "pi3",
                "pi4");
        revised(
                "pi1 B+ without its device tree",
                TREES,
                "stops",
                LinkKind.DEVICE_TREE,
                "900032",
                () -> full().remove("bcm2708-rpi-b-plus.dtb"));
        stops(
                "initramfs missing, LABEL= needs it",
                ROOT_NAMES,
                LinkKind.INITRAMFS,
                () -> settings("initramfs early.gz followkernel\n").rootName("LABEL=labroot"),
                "pi4");
        stops(
                "initramfs cut",
                GZIP,
                LinkKind.INITRAMFS,
                () -> settings("initramfs early.gz followkernel\n")
                        .put("early.gz", ChainFiles.initramfs())
                        .cut("early.gz", 900),
                "pi4");
        stops(
                "uncompressed early file system cut",
                "the kernel's initramfs buffer format page",
                LinkKind.INITRAMFS,
                () -> settings("initramfs early.cpio followkernel\n")
                        .put("early.cpio", ChainFiles.cpio(Map.of("init", new byte[5000])))
                        .cut("early.cpio", 3000),
                "pi4");
        stops("cmdline.txt missing", BOOT, LinkKind.COMMAND_LINE, () -> full().remove("cmdline.txt"), ALL);
        stops("cmdline.txt empty", LINE, LinkKind.COMMAND_LINE, () -> full().put("cmdline.txt", "\n"), "pi3", "pi5");
        stops(
                "cmdline.txt begins with an empty line",
                LINE,
                LinkKind.COMMAND_LINE,
                () -> full().put("cmdline.txt", "\nroot=/dev/mmcblk0p2 rootwait\n"),
                "pi3",
                "pi5");
        stops(
                "cmdline.txt saved as UTF-16",
                LINE,
                LinkKind.COMMAND_LINE,
                () -> full().put("cmdline.txt", "\u00FE root".getBytes(StandardCharsets.UTF_16)),
                "pi4");
        stops(
                "root= on the second line",
                LINE,
                LinkKind.ROOT,
                () -> full().put("cmdline.txt", "console=tty1\nroot=/dev/mmcblk0p2\n"),
                "pi3");
        stops("no root=", MOUNTS, LinkKind.ROOT, () -> full().put("cmdline.txt", "console=tty1 rootwait\n"), ALL);
        stops("root= of another card", BUILD, LinkKind.ROOT, () -> full().rootName("PARTUUID=deadbeef-02"), ALL);
        stops(
                "root= names a partition that is not there",
                ROOT_NAMES,
                LinkKind.ROOT,
                () -> full().rootName("PARTUUID=5c01ab07-03"),
                "pi3",
                "pi5");
        stops("root=/dev/mmcblk0p7", ROOT_NAMES, LinkKind.ROOT, () -> full().rootName("/dev/mmcblk0p7"), "pi3");
        stops(
                "root= names the FAT itself",
                ROOT_NAMES,
                LinkKind.ROOT,
                () -> full().rootName("PARTUUID=5c01ab07-01"),
                "pi3",
                "pi5");
        stops("root=/dev/mmcblk0", ROOT_NAMES, LinkKind.ROOT, () -> full().rootName("/dev/mmcblk0"), "pi3");
        stops("no second partition at all", BUILD, LinkKind.ROOT, () -> full().noRoot(), "pi3", "pi4", "pi5");
        stops(
                "UUID= without an early file system",
                ROOT_NAMES,
                LinkKind.ROOT,
                () -> full().rootName("UUID=" + ChainCard.ROOT_ID),
                "pi3",
                "pi4");
        stops(
                "LABEL= without an early file system",
                ROOT_NAMES,
                LinkKind.ROOT,
                () -> full().rootName("LABEL=" + ChainCard.ROOT_LABEL),
                "pi3");
        stops(
                "LABEL= that no file system has",
                ROOT_NAMES,
                LinkKind.ROOT,
                () -> settings("initramfs early.gz followkernel\n")
                        .put("early.gz", ChainFiles.initramfs())
                        .rootName("LABEL=writable"),
                "pi4");
        stops(
                "PARTLABEL= on a card with an MBR",
                ROOT_NAMES,
                LinkKind.ROOT,
                () -> full().rootName("PARTLABEL=system"),
                "pi4");
        stops(
                "PARTLABEL= in another case",
                ROOT_NAMES,
                LinkKind.ROOT,
                () -> full().gpt().rootName("PARTLABEL=System"),
                "pi4");
        stops("a PARTUUID of no form", ROOT_NAMES, LinkKind.ROOT, () -> full().rootName("PARTUUID=5c01ab07_02"), "pi4");
        stops("root partition filled with zeros", EXT4, LinkKind.ROOT, () -> full().root(new byte[4096]), "pi3", "pi4");
        stops(
                "image ends inside its second partition",
                EXT4,
                LinkKind.ROOT,
                () -> full().damage(disk -> disk.cutOffAt(full().rootStart() + (1 << 20))),
                "pi3",
                "pi4",
                "pi5");
        stops(
                "image ends before its second partition",
                EXT4,
                LinkKind.ROOT,
                () -> full().damage(disk -> disk.cutOffAt(full().rootStart())),
                "pi3",
                "pi4",
                "pi5");
        stops(
                "file system longer than its partition",
                EXT4,
                LinkKind.ROOT,
                () -> full().root(ChainFiles.ext4(ChainCard.ROOT_BYTES + 65_536, ChainCard.ROOT_ID, "x")),
                "pi3");
        stops(
                "rootfstype= of another file system",
                MOUNTS,
                LinkKind.ROOT,
                () -> full().put("cmdline.txt", "root=/dev/mmcblk0p2 rootfstype=f2fs rootwait\n"),
                "pi3");
        stops("boot sector damaged, its backup whole", FAT, LinkKind.PARTITION, LayoutTableTest::lostBootSector, "pi4");
        stops("boot ramdisk missing", BOOT, LinkKind.FIRMWARE, () -> settings("boot_ramdisk=1\n"), "pi4", "pi5");
        stops("boot ramdisk cut", BOOT, LinkKind.FIRMWARE, () -> ramdisk().cut("boot.img", 1 << 20), "pi4", "pi5");
        stops("boot ramdisk without a kernel", SECURE, LinkKind.KERNEL, LayoutTableTest::ramdiskWithoutKernel, "pi4");
        stops("rescue card", EEPROM, LinkKind.UPDATE, () -> update("pieeprom.bin", true, true), "pi4", "pi400");
        stops(
                "os_prefix set whose device tree is damaged",
                BOOT,
                LinkKind.DEVICE_TREE,
                () -> twoSets().put("two/bcm2711-rpi-4-b.dtb", new byte[1500]),
                "pi4");
        stops(
                "second-stage loader filled with zeros",
                PRACTICE,
                LinkKind.KERNEL,
                () -> settings("kernel=loader.bin\n").put("loader.bin", new byte[20_000]),
                "pi3");
    }

    private void notTold() {
        unknown("root= on a disk at USB", ROOT_NAMES, LinkKind.ROOT, () -> full().rootName("/dev/sda2"), "pi3", "pi4");
        unknown(
                "root= of another disk, and no system here",
                ROOT_NAMES,
                LinkKind.ROOT,
                () -> full().noRoot().rootName("PARTUUID=deadbeef-02"),
                "pi4");
        unknown(
                "pi4 with kernel7l.img alone and no arm_64bit",
                BOOT,
                LinkKind.KERNEL,
                () -> only("start4.*|fixup4.*|bcm2711.*|kernel7l\\.img"),
                "pi4");
        unknown(
                "pi5 with kernel8_16.img alone",
                "kernel repository, issue 7627, 2026",
                LinkKind.KERNEL,
                () -> only("bcm2712.*").put("kernel8_16.img", ChainFiles.gzippedKernel64(8192)),
                "pi5");
        unknown(
                "no device tree at all before pi3",
                TREES,
                LinkKind.DEVICE_TREE,
                () -> full().without("bcm.*dtb"),
                "pi1",
                "pi2");
        unknown(
                "kernel hangs on a pin",
                "config_txt/conditional.adoc, commit 0456a78c",
                LinkKind.KERNEL,
                () -> settings("[gpio4=1]\nkernel=gone.img\n"),
                "pi3",
                "pi4");
        unknown(
                "update waits without its digest",
                EEPROM,
                LinkKind.UPDATE,
                () -> update("pieeprom.upd", true, false),
                "pi4");
        unknown(
                "initramfs missing, root= needs none",
                BOOT,
                LinkKind.INITRAMFS,
                () -> settings("initramfs early.gz followkernel\n"),
                "pi4");
        unknown("armstub= missing", BOOT, LinkKind.KERNEL, () -> settings("armstub=gone.bin\n"), "pi3");
        unknown(
                "several lines with root= on the first",
                LINE,
                LinkKind.COMMAND_LINE,
                () -> full().put("cmdline.txt", "root=/dev/mmcblk0p2 rootwait\nquiet\n"),
                "pi3");
        unknown(
                "type 0xEF on pi3",
                "firmware repository, issue 1711, 2022",
                LinkKind.PARTITION,
                () -> full().bootType(0xEF),
                "pi3");
        unknown(
                "pi2 of unknown revision, one of its device trees alone",
                TREES,
                LinkKind.DEVICE_TREE,
                () -> full().remove("bcm2709-rpi-2-b.dtb"),
                "pi2");
    }

    private static String gptId(int number) {
        return "PARTUUID=5c01ab07-0000-4000-8000-00000000000" + number;
    }

    private static ChainCard twoSets() {
        ChainCard card = full();
        card.moveAllInto("one", "(bootcode|start|fixup|config|overlays).*");
        Map<String, byte[]> second = new TreeMap<>(ChainCard.everyBoard());
        second.keySet().removeIf(path -> path.matches("(bootcode|start|fixup|config|overlays).*"));
        // What the other set holds does not matter.
        card.put("one/kernel8.img", new byte[5000]);
        second.forEach((path, content) -> card.put("two/" + path, content));
        return card.config("os_prefix=two/\n");
    }

    private static ChainCard upstream() {
        return settings("upstream_kernel=1\narm_64bit=1\n")
                .put("upstream/kernel8.img", ChainFiles.gzippedKernel64(8192))
                .put("upstream/bcm2837-rpi-3-b.dtb", ChainFiles.deviceTree("3b"))
                .put("upstream/bcm2711-rpi-4-b.dtb", ChainFiles.deviceTree("4b"))
                .put("upstream/cmdline.txt", ChainCard.commandLine("/dev/mmcblk0p2"))
                .remove("kernel8.img", "kernel7.img");
    }

    private static Map<String, byte[]> insideRamdisk() {
        Map<String, byte[]> inside = new TreeMap<>(ChainCard.everyBoard());
        inside.keySet()
                .removeIf(path -> path.matches("bcm27(08|09|10).*|kernel7?l?\\.img|start_?[a-z]*\\.elf|.*[x_].*elf"));
        return inside;
    }

    private static ChainCard ramdisk() {
        return new ChainCard().config("boot_ramdisk=1\n").put("boot.img", ChainCard.ramdisk(insideRamdisk()));
    }

    private static ChainCard ramdiskWithoutKernel() {
        Map<String, byte[]> inside = insideRamdisk();
        inside.keySet().removeIf(path -> path.startsWith("kernel"));
        return new ChainCard().config("boot_ramdisk=1\n").put("boot.img", ChainCard.ramdisk(inside));
    }

    private static ChainCard twoPartitions() {
        Map<String, byte[]> second = new TreeMap<>(ChainCard.everyBoard());
        second.put("cmdline.txt", ChainCard.commandLine("/dev/mmcblk0p4").getBytes(StandardCharsets.UTF_8));
        Map<String, byte[]> third = new TreeMap<>(second);
        third.remove("kernel8.img");
        return new ChainCard()
                .put("autoboot.txt", "[all]\ntryboot_a_b=1\nboot_partition=2\n[tryboot]\nboot_partition=3\n")
                .moreBoot(second)
                .moreBoot(third);
    }

    private static ChainCard update(String image, boolean program, boolean digest) {
        byte[] memory = ChainFiles.bootMemory(524_288, 1_700_000_000L);
        ChainCard card = full().put(image, memory);
        if (program) {
            card.put("recovery.bin", ChainFiles.noise("recovery", 4000));
        }
        return digest ? card.put("pieeprom.sig", sha256(memory) + "\nts: 1700000000\ntarget-soc: 2711\n") : card;
    }

    static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    private static ChainCard lostBootSector() {
        return full().fat32().damage(disk -> {
            disk.patch(ChainCard.bootStart(), new byte[512]);
            return disk;
        });
    }

    @Test
    void everyLayoutComesToWhatItsDocumentationImplies() throws IOException {
        healthy();
        broken();
        notTold();
        assertThat(rows).hasSizeGreaterThan(60);
        List<String> alarms = new ArrayList<>();
        List<String> silences = new ArrayList<>();
        List<String> others = new ArrayList<>();
        int count = 0;
        for (Row row : rows) {
            var disk = row.card().get().build();
            for (String board : row.boards()) {
                count++;
                BootDiagnosis diagnosis = OpenedCard.diagnosis(disk, facts(row, board));
                BootChain chain = diagnosis.boards().get(0).chain();
                String found = words(chain.verdict());
                String wanted = row.verdict()
                        + row.link().map(link -> " " + link.word()).orElse("");
                String line = row.name() + " (" + row.source() + ") on " + chain.board() + ": wanted " + wanted
                        + ", found " + found + " " + chain.verdict();
                if (!found.equals(wanted)) {
                    if (row.verdict().equals("boots")) {
                        alarms.add(line);
                    } else if (row.verdict().equals("stops") && !(chain.verdict() instanceof Verdict.Stops)) {
                        silences.add(line);
                    } else {
                        others.add(line);
                    }
                }
            }
        }
        System.out.println(rows.size() + " layouts, " + count + " board and layout pairs: " + alarms.size()
                + " false alarms, " + silences.size() + " false silences, " + others.size() + " other differences");
        assertThat(alarms).as("false alarms").isEmpty();
        assertThat(silences).as("false silences").isEmpty();
        assertThat(others).as("other differences").isEmpty();
    }

    private BoardFacts facts(Row row, String board) {
        if (row.revision().isPresent()) {
            Revision revision = tables.revisions().decode(row.revision().get());
            return BoardFacts.none().withRevision(revision);
        }
        return BoardFacts.of(tables.boards().find(board).orElseThrow());
    }

    private static String words(Verdict verdict) {
        if (verdict instanceof Verdict.Stops stops) {
            return "stops " + stops.cause().link().word();
        } else if (verdict instanceof Verdict.Unknown unknown) {
            return "unknown " + unknown.link().word();
        }
        return verdict.word();
    }
}
