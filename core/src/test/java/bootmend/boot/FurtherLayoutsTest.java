package bootmend.boot;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.fixtures.ChainCard;
import bootmend.fixtures.ChainFiles;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/**
 * More card layouts, written down from the published documentation alone, before the code that judges them was read, each
 * with the verdict that the documentation implies; where it leaves a warning, both verdicts are named. The documents are
 * named as in {@link LayoutTableTest}.
 */
class FurtherLayoutsTest {

    private static final String ROOT_NAMES =
            "the kernel, block/early-lookup.c, commit 017fb83e (comment on root names)";
    private static final String MARKS = "the kernel: ext4/super.rst 14e77332, f2fs_fs.h, btrfs_tree.h (magic numbers)";
    private static final String BOOT = "config_txt/boot.adoc, commit 0456a78c";
    private static final String OLD_BOOT = "legacy_config_txt/boot.adoc, commit 32f78cdf";
    private static final String FOLDER = "configuration/boot_folder.adoc, commit 044dfa24";
    private static final String TREES = "configuration/device-tree.adoc, commit 042aa6fd";
    private static final String LINE = "configuration/kernel-command-line-config.adoc, commit 14c113a6";
    private static final String EEPROM = "boot-eeprom.adoc, commit 01d01d3f";
    private static final String AUTOBOOT = "config_txt/autoboot.adoc, commit 04d84a86";
    private static final String SECURE = "docs/secure-boot.md, commit 87d6e032";
    private static final String FILTERS = "config_txt/conditional.adoc, commit 0456a78c";
    private static final String INCLUDES = "config_txt/what_is_config_txt.adoc, commits 57ad5821 and 0ff39f51";
    private static final String TYPES = "firmware repository, issue 1711";
    private static final String NOTES = "boot-memory repository, firmware-2711/release-notes.md";
    private static final String BUILD_2026 = "kernel build scripts, September 2026 (kernel7l.img is no longer built)";
    private static final String PRACTICE = "common practice, no source";

    private final List<Row> rows = new ArrayList<>();

    /** One layout: {@code wanted} is a verdict, or a verdict and its link, or several of these with a bar between. */
    private record Row(String name, String source, String wanted, Supplier<ChainCard> card, List<String> boards) {}

    private void row(String wanted, String name, String source, Supplier<ChainCard> card, String... boards) {
        rows.add(new Row(name, source, wanted, card, List.of(boards)));
    }

    private static ChainCard full() {
        return ChainCard.full();
    }

    private static ChainCard config(String text) {
        return full().config(text);
    }

    private static ChainCard root(String name) {
        return full().rootName(name);
    }

    /** A card with a second boot partition, the system behind both. */
    private static ChainCard two(Map<String, byte[]> first, Map<String, byte[]> second) {
        return new ChainCard().putAll(first).moreBoot(second);
    }

    private static Map<String, byte[]> everything(String root) {
        Map<String, byte[]> files = new TreeMap<>(ChainCard.everyBoard());
        files.put("cmdline.txt", ChainCard.commandLine(root).getBytes(StandardCharsets.UTF_8));
        return files;
    }

    private static Map<String, byte[]> with(Map<String, byte[]> files, String name, String text) {
        Map<String, byte[]> all = new TreeMap<>(files);
        all.put(name, text.getBytes(StandardCharsets.UTF_8));
        return all;
    }

    private static byte[] mark(int size, int at, byte... bytes) {
        byte[] begin = new byte[size];
        System.arraycopy(bytes, 0, begin, at, bytes.length);
        return begin;
    }

    private static byte[] f2fs() {
        byte[] begin = mark(4096, 0x400, (byte) 0x10, (byte) 0x20, (byte) 0xF5, (byte) 0xF2);
        // 4 MiB in blocks of 4096 bytes, so that it ends with its partition
        ByteBuffer out = ByteBuffer.wrap(begin).order(ByteOrder.LITTLE_ENDIAN);
        out.putInt(0x400 + 12, 9).putInt(0x400 + 16, 12).putLong(0x400 + 36, 1024);
        return begin;
    }

    private static byte[] btrfs() {
        byte[] begin = mark(0x11000, 0x10040, "_BHRfS_M".getBytes(StandardCharsets.US_ASCII));
        ByteBuffer.wrap(begin).order(ByteOrder.LITTLE_ENDIAN).putLong(0x10070, ChainCard.ROOT_BYTES);
        return begin;
    }

    private static ChainCard typed(String rootType, byte[] system) {
        return full().root(system)
                .put("cmdline.txt", "console=tty1 root=PARTUUID=5c01ab07-02 rootfstype=" + rootType + " rootwait\n");
    }

    private static ChainCard ramdisk(String without) {
        Map<String, byte[]> inside = new HashMap<>(ChainCard.everyBoard());
        inside.keySet()
                .removeIf(name ->
                        !name.matches("start4\\.elf|fixup4\\.dat|kernel8\\.img|bcm2711.*|config\\.txt|cmdline\\.txt")
                                || name.matches(without));
        return new ChainCard().config("boot_ramdisk=1\n").put("boot.img", ChainCard.ramdisk(inside));
    }

    /** The two entries of the table the other way round: the system is partition 1, the boot files are partition 2. */
    private static ChainCard swapped() {
        return root("PARTUUID=5c01ab07-01").damage(disk -> {
            byte[] entries = disk.toBytes(446, 32);
            byte[] turned = new byte[32];
            System.arraycopy(entries, 16, turned, 0, 16);
            System.arraycopy(entries, 0, turned, 16, 16);
            disk.patch(446, turned);
            return disk;
        });
    }

    private void roots() {
        row("boots", "disk id in capitals", ROOT_NAMES, () -> root("PARTUUID=5C01AB07-02"), "pi3", "pi5");
        row(
                "stops root",
                "disk id alone: its first partition is meant",
                ROOT_NAMES,
                () -> root("PARTUUID=5c01ab07"),
                "pi4");
        row("stops root", "partition number of one digit", ROOT_NAMES, () -> root("PARTUUID=5c01ab07-2"), "pi4");
        row("boots", "one partition further", ROOT_NAMES, () -> root("PARTUUID=5c01ab07-01/PARTNROFF=1"), "pi4");
        row(
                "stops root",
                "three partitions further",
                ROOT_NAMES,
                () -> root("PARTUUID=5c01ab07-01/PARTNROFF=3"),
                "pi4");
        row("boots", "major and minor in hex", ROOT_NAMES, () -> root("b302"), "pi4");
        row("boots", "major and minor with a colon", ROOT_NAMES, () -> root("179:2"), "pi4");
        row(
                "stops root",
                "decimal number for partition 16, which is not there",
                ROOT_NAMES,
                () -> root("PARTUUID=5c01ab07-10"),
                "pi4");
        row(
                "boots|unknown root",
                "a network root: the card's own part is whole",
                ROOT_NAMES,
                () -> root("/dev/nfs nfsroot=10.0.0.1:/srv ip=dhcp"),
                "pi4");
        row("unknown root", "another disk", ROOT_NAMES, () -> root("/dev/sda2"), "pi4", "pi3");
        row("boots", "GPT name", ROOT_NAMES, () -> root("PARTLABEL=system").gpt(), "pi4", "pi5");
        row(
                "stops root",
                "GPT name in other letters",
                ROOT_NAMES,
                () -> root("PARTLABEL=System").gpt(),
                "pi4");
        row(
                "stops root",
                "partition name on a card with a master boot record",
                ROOT_NAMES,
                () -> root("PARTLABEL=system"),
                "pi4");
        row(
                "stops root",
                "file system label without an early file system",
                ROOT_NAMES,
                () -> root("LABEL=labroot").config("auto_initramfs=1\n"),
                "pi4");
        row(
                "boots",
                "file system label and an early file system",
                ROOT_NAMES,
                () -> root("LABEL=labroot").config("auto_initramfs=1\n").put("initramfs8", ChainFiles.initramfs()),
                "pi4");
        row(
                "stops root",
                "file system id of another card and an early file system",
                ROOT_NAMES,
                () -> root("UUID=00000000-1111-4222-8333-444455556666")
                        .config("auto_initramfs=1\n")
                        .put("initramfs8", ChainFiles.initramfs()),
                "pi4");
        row("boots", "f2fs", MARKS, () -> typed("f2fs", f2fs()), "pi4");
        row("boots", "btrfs", MARKS, () -> typed("btrfs", btrfs()), "pi4");
        row("stops root", "line says ext4, f2fs stands there", MARKS, () -> typed("ext4", f2fs()), "pi4");
        row(
                "boots",
                "types with commas",
                ROOT_NAMES,
                () -> typed("f2fs,ext4", ChainFiles.ext4(ChainCard.ROOT_BYTES, new UUID(1, 2), "sys")),
                "pi4");
        row(
                "stops root",
                "ext4 longer than its partition",
                MARKS,
                () -> full().root(ChainFiles.ext4(ChainCard.ROOT_BYTES * 2, new UUID(1, 2), "sys")),
                "pi4");
        row("stops root", "nothing in the system's partition", MARKS, () -> full().root(new byte[4096]), "pi4");
        row(
                "boots",
                "root= twice: the later counts",
                PRACTICE,
                () -> root("PARTUUID=99999999-02 root=/dev/mmcblk0p2"),
                "pi4");
    }

    private void firmware() {
        row(
                "boots",
                "cut-down pair asked for in an included file only",
                INCLUDES,
                () -> config("include more.txt\n")
                        .put("more.txt", "gpu_mem=16\n")
                        .without("(start|fixup)4?_?cd\\..*"),
                "pi3",
                "pi4");
        row(
                "stops firmware",
                "cut-down pair asked for and not there",
                BOOT + "; " + FOLDER,
                () -> config("gpu_mem=16\n").without("(start|fixup)_cd\\..*"),
                "pi3");
        row(
                "stops firmware",
                "cut-down pair asked for and not there",
                BOOT + "; " + FOLDER,
                () -> config("gpu_mem=16\n").without("(start|fixup)4cd\\..*"),
                "pi4");
        row(
                "stops firmware",
                "camera pair asked for and not there",
                OLD_BOOT,
                () -> config("start_x=1\n").without("(start|fixup)_x\\..*"),
                "pi3");
        row(
                "boots",
                "pair by name",
                BOOT,
                () -> config("start_file=my.elf\nfixup_file=my.dat\n")
                        .rename("start4.elf", "my.elf")
                        .rename("fixup4.dat", "my.dat"),
                "pi4");
        row(
                "stops firmware",
                "start file by name without its fixup file",
                BOOT,
                () -> config("start_file=my.elf\nfixup_file=my.dat\n").rename("start4.elf", "my.elf"),
                "pi4");
        row("boots", "no bootcode.bin", FOLDER, () -> full().remove("bootcode.bin"), "pi4", "pi5");
        row("stops firmware", "no bootcode.bin", FOLDER, () -> full().remove("bootcode.bin"), "pi0", "pi2", "cm3");
        row(
                "stops firmware|unknown firmware",
                "only the other family's start file",
                FOLDER,
                () -> full().without("(start|fixup)4.*"),
                "pi4");
        row(
                "boots",
                "no start file at all",
                BOOT,
                () -> full().without("(start|fixup).*|bootcode\\.bin"),
                "pi5",
                "cm5");
        row("stops firmware|unknown firmware", "fixup file missing", BOOT, () -> full().remove("fixup.dat"), "pi3");
    }

    private void settings() {
        row("boots", "no config file", INCLUDES, () -> full().remove("config.txt"), "pi4", "pi3");
        row("stops", "no config file", BOOT, () -> full().remove("config.txt"), "pi5");
        row(
                "stops kernel",
                "kernel in an included file",
                INCLUDES,
                () -> config("include more.txt\n").put("more.txt", "kernel=gone.img\n"),
                "pi4");
        row("boots", "another board's section", FILTERS, () -> config("[pi5]\nkernel=gone.img\n"), "pi4", "pi3");
        row("stops kernel", "its own section", FILTERS, () -> config("[pi4]\nkernel=gone.img\n"), "pi400");
        row("boots", "a section that nothing reads", FILTERS, () -> config("[none]\nkernel=gone.img\n[all]\n"), "pi4");
        row("unknown kernel", "a pin decides", FILTERS, () -> config("[gpio4=1]\nkernel=gone.img\n"), "pi4");
        row("unknown kernel", "a display decides", FILTERS, () -> config("[EDID=LAB-1]\nkernel=gone.img\n"), "pi4");
        row(
                "boots",
                "for the try-once start alone",
                FILTERS,
                () -> config("[tryboot]\nkernel=gone.img\n"),
                "pi4",
                "pi5");
        row("boots", "a key in capitals is none", INCLUDES, () -> config("Kernel=gone.img\n"), "pi4");
        row("boots", "the later line counts", INCLUDES, () -> config("kernel=gone.img\nkernel=kernel8.img\n"), "pi4");
        row(
                "stops kernel",
                "a comment behind a value belongs to it",
                INCLUDES,
                () -> config("kernel=kernel8.img # mine\n"),
                "pi4");
        row(
                "boots",
                "lines end as another system ends them",
                PRACTICE,
                () -> config("arm_64bit=1\r\nkernel=kernel8.img\r\n"),
                "pi4");
    }

    private void kernels() {
        row(
                "stops kernel",
                "32-bit kernel asked for that is no longer built",
                BUILD_2026,
                () -> config("arm_64bit=0\n").remove("kernel7l.img"),
                "pi4");
        row(
                "boots",
                "32-bit kernel and no 64-bit one",
                BOOT,
                () -> config("arm_64bit=0\n").remove("kernel8.img"),
                "pi4");
        row("boots", "falls back to kernel8.img", BOOT, () -> full().remove("kernel_2712.img"), "pi5");
        row("boots", "32-bit asked for on a board that is always 64-bit", BOOT, () -> config("arm_64bit=0\n"), "pi5");
        row(
                "stops kernel",
                "neither of its kernels",
                BOOT,
                () -> full().remove("kernel_2712.img", "kernel8.img"),
                "pi5");
        row(
                "boots",
                "only a 64-bit kernel on the card",
                BOOT,
                () -> config("").without("kernel(7|7l|)\\.img"),
                "pi3",
                "pi02");
        row("boots", "64-bit kernel by a known name", BOOT, () -> config("kernel=kernel8.img\n"), "pi3");
        row(
                "boots",
                "64-bit kernel by a name that ends in 8.img",
                BOOT,
                () -> config("kernel=mine8.img\n").rename("kernel8.img", "mine8.img"),
                "pi3");
        row(
                "boots",
                "64-bit kernel by another name, said to be one",
                BOOT,
                () -> config("arm_64bit=1\nkernel=vmlinuz\n").rename("kernel8.img", "vmlinuz"),
                "pi3");
        row(
                "stops kernel|unknown kernel",
                "64-bit kernel by another name",
                BOOT,
                () -> config("kernel=vmlinuz\n").rename("kernel8.img", "vmlinuz"),
                "pi3");
        row(
                "stops kernel",
                "only a 64-bit kernel for a 32-bit board",
                BOOT,
                () -> config("").without("kernel(7|7l|)\\.img"),
                "pi0",
                "pi1",
                "cm1");
        row(
                "stops kernel",
                "64-bit kernel by name for a 32-bit board",
                BOOT,
                () -> config("kernel=kernel8.img\n"),
                "pi0w");
        row(
                "unknown kernel",
                "a packed 32-bit kernel: nothing is published",
                BOOT,
                () -> full().put("kernel7.img", ChainFiles.gzip(ChainFiles.kernel32(6000))),
                "pi2");
        row(
                "boots",
                "own first code for the cores",
                BOOT,
                () -> config("armstub=stub.bin\n").put("stub.bin", ChainFiles.loader(true)),
                "pi4");
    }

    private void prefixes() {
        String butPattern = "config\\.txt|start.*|fixup.*|bootcode\\.bin";
        row(
                "boots",
                "all in a folder",
                BOOT,
                () -> config("os_prefix=old/\n").moveAllInto("old", butPattern),
                "pi4",
                "pi3",
                "pi5");
        row("boots", "a prefix that leads nowhere is dropped", BOOT, () -> config("os_prefix=gone/\n"), "pi4", "pi5");
        row(
                "boots",
                "a prefix with a kernel and no device tree is dropped",
                BOOT,
                () -> config("os_prefix=half/\n").put("half/kernel8.img", ChainFiles.kernel64(2048)),
                "pi4");
        row(
                "stops kernel|unknown kernel",
                "dropped prefix and no kernel beside it",
                BOOT,
                () -> config("os_prefix=half/\n").rename("kernel8.img", "half/kernel8.img"),
                "pi4");
        row(
                "boots",
                "a prefix that is no folder",
                BOOT,
                () -> config("os_prefix=v2-\n")
                        .rename("kernel8.img", "v2-kernel8.img")
                        .rename("bcm2711-rpi-4-b.dtb", "v2-bcm2711-rpi-4-b.dtb")
                        .rename("cmdline.txt", "v2-cmdline.txt"),
                "pi4");
        row(
                "stops cmdline|stops root",
                "command line outside the prefix",
                BOOT,
                () -> config("os_prefix=old/\n").moveAllInto("old", butPattern + "|cmdline\\.txt"),
                "pi4");
        row(
                "boots",
                "command line outside the prefix, named from the top",
                BOOT,
                () -> config("os_prefix=old/\ncmdline=/cmdline.txt\n")
                        .moveAllInto("old", butPattern + "|cmdline\\.txt"),
                "pi4");
        row(
                "boots",
                "other folder of overlays",
                BOOT,
                () -> config("overlay_prefix=more/\ndtoverlay=mine\n")
                        .put("more/mine.dtbo", ChainFiles.deviceTree("mine")),
                "pi4");
        row(
                "boots",
                "upstream kernel in its folder",
                OLD_BOOT,
                () -> config("upstream_kernel=1\n")
                        .rename("kernel8.img", "upstream/kernel8.img")
                        .put("upstream/bcm2711-rpi-cm4-io.dtb", ChainFiles.deviceTree("cm4-io"))
                        .rename("cmdline.txt", "upstream/cmdline.txt"),
                "cm4");
    }

    private void trees() {
        row("stops devicetree", "named and not there", TREES, () -> config("device_tree=mine.dtb\n"), "pi4");
        row(
                "boots",
                "another board's, by name",
                TREES,
                () -> config("device_tree=mine.dtb\n").rename("bcm2711-rpi-4-b.dtb", "mine.dtb"),
                "pi4");
        row("stops devicetree|unknown devicetree", "turned off", TREES, () -> config("device_tree=\n"), "pi4");
        row("stops devicetree", "another board's only", TREES, () -> full().remove("bcm2711-rpi-400.dtb"), "pi400");
        row("boots", "another board's missing", TREES, () -> full().remove("bcm2711-rpi-400.dtb"), "pi4");
        row(
                "boots|unknown devicetree",
                "only for modules without storage, which alone take a card",
                TREES,
                () -> full().without("bcm2712-rpi-cm5-.*"),
                "cm5");
        row("boots", "an overlay that is not there is passed over", TREES, () -> config("dtoverlay=nosuch\n"), "pi4");
        row("boots", "a parameter that is not there is passed over", TREES, () -> config("dtparam=nosuch=on\n"), "pi4");
        row("stops devicetree", "cut to its header", TREES, () -> full().cut("bcm2710-rpi-3-b.dtb", 60), "pi3");
        row(
                "boots",
                "early file system looked for and not there",
                BOOT,
                () -> config("auto_initramfs=1\n"),
                "pi4",
                "pi5");
        row(
                "boots",
                "early file system by two keys",
                BOOT,
                () -> config("ramfsfile=init.gz\nramfsaddr=-1\n").put("init.gz", ChainFiles.initramfs()),
                "pi4");
        row(
                "boots",
                "early file system of two files",
                BOOT,
                () -> config("initramfs a.gz,b.gz followkernel\n")
                        .put("a.gz", ChainFiles.initramfs())
                        .put("b.gz", ChainFiles.initramfs()),
                "pi4");
    }

    private void lines() {
        row(
                "boots",
                "command line by another name",
                BOOT,
                () -> config("cmdline=mine.txt\n").rename("cmdline.txt", "mine.txt"),
                "pi4");
        row(
                "stops cmdline|stops root",
                "command line by a name that is not there",
                BOOT,
                () -> config("cmdline=mine.txt\n"),
                "pi4");
        row(
                "stops root|stops cmdline",
                "root= on the second line",
                LINE,
                () -> full().put("cmdline.txt", "console=tty1\nroot=PARTUUID=5c01ab07-02 rootwait\n"),
                "pi4");
        row(
                "boots",
                "no newline at the end",
                LINE,
                () -> full().put("cmdline.txt", "console=tty1 root=PARTUUID=5c01ab07-02 rootwait"),
                "pi3");
        row(
                "boots",
                "words of a first start",
                PRACTICE,
                () -> root("PARTUUID=5c01ab07-02 init=/usr/lib/first-start/firstboot"),
                "pi4");
    }

    private void partitions() {
        row("stops partition|unknown partition", "partition type 0xEF", TYPES, () -> full().bootType(0xEF), "pi3");
        row("boots", "partition type 0x0B", TYPES, () -> full().bootType(0x0B), "pi3", "pi4");
        row("boots", "GPT", FOLDER, () -> root("PARTLABEL=system").gpt(), "pi3");
        row("boots", "the system's partition first", NOTES, FurtherLayoutsTest::swapped, "pi4", "pi5");
        row(
                "boots",
                "second boot partition named",
                AUTOBOOT,
                () -> two(
                        Map.of("autoboot.txt", "[all]\nboot_partition=2\n".getBytes(StandardCharsets.UTF_8)),
                        everything("PARTUUID=5c01ab07-03")),
                "pi4",
                "pi5");
        row(
                "stops kernel|unknown kernel",
                "second boot partition named, without a 64-bit kernel",
                AUTOBOOT,
                () -> {
                    Map<String, byte[]> second = everything("PARTUUID=5c01ab07-03");
                    second.remove("kernel8.img");
                    return two(
                            with(everything("PARTUUID=5c01ab07-03"), "autoboot.txt", "[all]\nboot_partition=2\n"),
                            second);
                },
                "pi4");
        row(
                "boots",
                "other partition for the try-once start only",
                AUTOBOOT,
                () -> two(
                        with(
                                everything("PARTUUID=5c01ab07-03"),
                                "autoboot.txt",
                                "[all]\ntryboot_a_b=1\nboot_partition=1\n[tryboot]\nboot_partition=2\n"),
                        Map.of()),
                "pi4",
                "pi5");
        row("boots", "boot ramdisk", BOOT + "; " + SECURE, () -> ramdisk("-"), "pi4", "cm4");
        row(
                "stops kernel",
                "boot ramdisk without a kernel",
                BOOT + "; " + SECURE,
                () -> ramdisk("kernel8\\.img"),
                "pi4");
        row(
                "stops",
                "boot ramdisk asked for and not there",
                BOOT,
                () -> ramdisk("-").remove("boot.img"),
                "pi4");
        row("boots", "left-over tryboot.txt", AUTOBOOT, () -> full().put("tryboot.txt", "kernel=gone.img\n"), "pi4");
    }

    private void updates() {
        byte[] image = ChainFiles.bootMemory(524_288, 1_700_000_000L);
        row(
                "boots",
                "used update file",
                EEPROM,
                () -> full().put("recovery.000", ChainFiles.noise("rec", 3000)),
                "pi4");
        row(
                "boots",
                "another family's update files",
                EEPROM,
                () -> full().put("recovery.bin", ChainFiles.noise("rec", 3000))
                        .put("pieeprom.bin", image)
                        .put("pieeprom.sig", signature(image)),
                "pi3");
        row(
                "stops update",
                "image that is written at each start",
                EEPROM,
                () -> full().put("recovery.bin", ChainFiles.noise("rec", 3000))
                        .put("pieeprom.bin", image)
                        .put("pieeprom.sig", signature(image)),
                "pi4");
        row(
                "boots",
                "update without recovery.bin",
                EEPROM,
                () -> full().put("pieeprom.upd", image).put("pieeprom.sig", signature(image)),
                "pi4");
        row(
                "boots",
                "update that runs once",
                EEPROM,
                () -> full().put("recovery.bin", ChainFiles.noise("rec", 3000))
                        .put("pieeprom.upd", image)
                        .put("pieeprom.sig", signature(image)),
                "pi4");
        row(
                "stops update|unknown update",
                "update whose check sum is another's",
                EEPROM,
                () -> full().put("recovery.bin", ChainFiles.noise("rec", 3000))
                        .put("pieeprom.upd", image)
                        .put("pieeprom.sig", signature(new byte[5])),
                "pi4");
    }

    private static String signature(byte[] image) {
        return LayoutTableTest.sha256(image) + "\nts: 1700000000\ntarget-soc: 2711\n";
    }

    @Test
    void everyLayoutComesToWhatItsDocumentationImplies() throws IOException {
        roots();
        firmware();
        settings();
        kernels();
        prefixes();
        trees();
        lines();
        partitions();
        updates();
        TuningTables tables = TuningTables.load();
        List<String> alarms = new ArrayList<>();
        List<String> silences = new ArrayList<>();
        List<String> others = new ArrayList<>();
        int pairs = 0;
        for (Row row : rows) {
            var disk = row.card().get().build();
            for (String board : row.boards()) {
                pairs++;
                BoardFacts facts = BoardFacts.of(tables.boards().find(board).orElseThrow());
                Verdict verdict = OpenedCard.diagnosis(disk, facts)
                        .boards()
                        .get(0)
                        .chain()
                        .verdict();
                String found = words(verdict);
                if (List.of(row.wanted().split("\\|")).contains(found)
                        || List.of(row.wanted().split("\\|")).contains(verdict.word())) {
                    continue;
                }
                String line = row.name() + " (" + row.source() + ") on " + board + ": wanted " + row.wanted()
                        + ", found " + found + " " + verdict;
                if (row.wanted().equals("boots")) {
                    alarms.add(line);
                } else if (row.wanted().startsWith("stops") && !(verdict instanceof Verdict.Stops)) {
                    silences.add(line);
                } else {
                    others.add(line);
                }
            }
        }
        System.out.println(rows.size() + " further layouts, " + pairs + " board and layout pairs: " + alarms.size()
                + " false alarms, " + silences.size() + " false silences, " + others.size() + " other differences");
        assertThat(alarms).as("false alarms").isEmpty();
        assertThat(silences).as("false silences").isEmpty();
        assertThat(others).as("other differences").isEmpty();
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
