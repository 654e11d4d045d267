package bootmend.check;

import static bootmend.finding.Purpose.FIRMWARE_UPDATE;
import static bootmend.finding.Purpose.SHIP;
import static bootmend.finding.Purpose.STABILITY_RUN;
import static org.assertj.core.api.Assertions.assertThat;

import bootmend.fat.VolumeSpace;
import bootmend.finding.Finding;
import bootmend.finding.Fix;
import bootmend.finding.Place;
import bootmend.finding.Purpose;
import bootmend.finding.Rule;
import bootmend.finding.Severity;
import bootmend.fixtures.BootFiles;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every rule fires on a small case and is silent on its healthy neighbour. What is published stands in rules.csv beside
 * each rule; limits and boards here are read from the published tables by hand: "Overclocking options",
 * config_txt/overclocking.adoc, commit 6e5f9446 (over_voltage 6, temp_limit 85, stock clocks); "Revision codes",
 * revision-codes.adoc, commit 0456a78c (warranty bit); "Boot options", config_txt/boot.adoc, commit f6839a6f (files).
 */
class RuleTableTest {

    /**
     * One rule.
     *
     * @param where the finding's place in words
     * @param words something its sentence says
     */
    private record Case(
            String rule,
            Purpose purpose,
            TestCard fires,
            String where,
            String words,
            TestCard silent,
            Purpose silentFor) {

        static Case of(String rule, TestCard fires, String where, String words, TestCard silent) {
            return new Case(rule, SHIP, fires, where, words, silent, SHIP);
        }

        @Override
        public String toString() {
            return rule + " at " + where;
        }
    }

    private static final TestCard STOCK = TestCard.stock();

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void firesOnItsCaseAndNotOnTheHealthyNeighbour(Case rule) {
        assertThat(rule.fires().check(rule.purpose()))
                .filteredOn(finding -> finding.id().equals(rule.rule()))
                .anySatisfy(finding -> {
                    assertThat(finding.where().words()).isEqualTo(rule.where());
                    assertThat(finding.what()).contains(rule.words());
                });
        assertThat(rule.silent().check(rule.silentFor()))
                .extracting(Finding::id)
                .doesNotContain(rule.rule());
    }

    @Test
    void everyRuleOfTheDataFileHasACase() {
        assertThat(cases().map(Case::rule).collect(Collectors.toSet()))
                .containsExactlyInAnyOrderElementsOf(RuleBook.load(TestCard.TABLES.sources()).all().stream()
                        .map(Rule::id)
                        .toList());
    }

    static Stream<Case> cases() {
        return Stream.of(tuning(), values(), lines(), configFile(), bootFiles(), content(), start(), volume())
                .flatMap(each -> each);
    }

    static Stream<Case> tuning() {
        return Stream.of(
                Case.of(
                        "tuning-line-active",
                        STOCK.config("[pi4]", "arm_freq=1800"),
                        "config.txt line 2",
                        "arm_freq=1800 is active in section [pi4]",
                        STOCK.config("#arm_freq=1800", "arm_boost=1")),
                Case.of(
                        "over-voltage-needs-turbo",
                        STOCK.config("over_voltage=7"),
                        "config.txt line 1",
                        "over_voltage=7",
                        STOCK.config("over_voltage=6")),
                Case.of(
                        "over-voltage-needs-turbo",
                        STOCK.config("over_voltage=8", "force_turbo=0"),
                        "config.txt line 1",
                        "no force_turbo=1",
                        STOCK.config("over_voltage=8", "force_turbo=1")),
                Case.of(
                        "warranty-bit",
                        STOCK.on("pi3").config("force_turbo=1", "over_voltage_sdram=2"),
                        "config.txt line 1",
                        "over_voltage_sdram=2 (config.txt line 2)",
                        STOCK.on("pi4").config("force_turbo=1", "over_voltage=2")),
                Case.of(
                        "warranty-bit",
                        STOCK.on("pi1").config("over_voltage=1", "force_turbo=1"),
                        "config.txt line 2",
                        "over_voltage=1",
                        STOCK.on("pi1").config("over_voltage=0", "force_turbo=1")),
                Case.of(
                        "warranty-bit-not-published",
                        STOCK.on("pi5").config("force_turbo=1", "over_voltage_delta=50000"),
                        "config.txt line 1",
                        "over_voltage_delta=50000",
                        STOCK.on("pi4").config("force_turbo=1", "over_voltage_delta=50000")),
                Case.of(
                        "clock-above-stock-hand-voltage",
                        STOCK.config("arm_freq=2000", "over_voltage=4"),
                        "config.txt line 1",
                        "+33 % (stock 1500 MHz)",
                        STOCK.config("arm_freq=2000")),
                Case.of(
                        "clock-above-stock-scaled-voltage",
                        STOCK.config("gpu_freq=600"),
                        "config.txt line 1",
                        "+20 % (stock 500 MHz) for core_freq h264_freq isp_freq v3d_freq hevc_freq",
                        STOCK.config("gpu_freq=500", "arm_boost=1")),
                Case.of(
                        "clock-floor-below-stock",
                        STOCK.config("arm_freq_min=300"),
                        "config.txt line 1",
                        "-50 % (stock 600 MHz)",
                        STOCK.config("arm_freq_min=600")),
                Case.of(
                        "key-ignored",
                        STOCK.config("sdram_freq=3200"),
                        "config.txt line 1",
                        "sdram_freq=3200",
                        STOCK.on("pi3").config("sdram_freq=500")),
                Case.of(
                        "key-ignored",
                        STOCK.config("temp_soft_limit=70"),
                        "config.txt line 1",
                        "temp_soft_limit=70",
                        STOCK.on("pi3+").config("temp_soft_limit=70")),
                Case.of(
                        "key-ignored",
                        STOCK.config("over_voltage_min=2"),
                        "config.txt line 1",
                        "over_voltage_min=2",
                        STOCK.on("pi2").config("over_voltage_min=2")),
                new Case(
                        "practice-lowest-voltage",
                        STABILITY_RUN,
                        STOCK.config("over_voltage=2"),
                        "config.txt line 1",
                        "over_voltage=2",
                        STOCK.config("over_voltage=-2"),
                        STABILITY_RUN),
                new Case("practice-stability-run", STABILITY_RUN, STOCK, "in general", "45 minutes", STOCK, SHIP),
                new Case("practice-firmware-update", FIRMWARE_UPDATE, STOCK, "in general", "power", STOCK, SHIP),
                Case.of("practice-heat-and-supply", STOCK.config("arm_freq=1800"), "in general", "heat sink", STOCK));
    }

    static Stream<Case> values() {
        return Stream.of(
                Case.of(
                        "value-not-a-number",
                        STOCK.config("arm_freq=\"1800\""),
                        "config.txt line 1",
                        "\"\"1800\"\"",
                        STOCK.config("arm_freq=0x708")),
                Case.of(
                        "value-out-of-range",
                        STOCK.config("over_voltage=9"),
                        "config.txt line 1",
                        "above what is published, -16 to 8",
                        STOCK.config("over_voltage=8")),
                Case.of(
                        "value-out-of-range",
                        STOCK.config("over_voltage=-17"),
                        "config.txt line 1",
                        "below",
                        STOCK.config("over_voltage=-16")),
                Case.of(
                        "temp-limit-above-85",
                        STOCK.config("temp_limit=90"),
                        "config.txt line 1",
                        "counts as 85",
                        STOCK.config("temp_limit=85")),
                Case.of(
                        "blank-beside-equals",
                        STOCK.config("arm_freq =1800"),
                        "config.txt line 1",
                        "\"arm_freq =1800\"",
                        STOCK.config("arm_freq=1800")),
                Case.of(
                        "blank-beside-equals",
                        STOCK.config("gpu_mem= 64"),
                        "config.txt line 1",
                        "\"gpu_mem= 64\"",
                        STOCK.config("gpu_mem=64")),
                Case.of(
                        "wrong-letter-case",
                        STOCK.config("Arm_Freq=1800"),
                        "config.txt line 1",
                        "arm_freq is one",
                        STOCK.config("arm_freq=1800")),
                Case.of(
                        "trailing-comment",
                        STOCK.config("arm_freq=1800 # for the fair"),
                        "config.txt line 1",
                        "not \"1800\"",
                        STOCK.config("# for the fair", "arm_freq=1800")),
                Case.of(
                        "past-line-limit",
                        STOCK.config("dtparam=" + "x".repeat(91)),
                        "config.txt line 1",
                        "99 characters; the board reads 98",
                        STOCK.config("dtparam=" + "x".repeat(90))));
    }

    static Stream<Case> lines() {
        return Stream.of(
                Case.of(
                        "section-no-board",
                        STOCK.config("[pi3]", "gpu_mem=64", "enable_uart=1"),
                        "config.txt line 2",
                        "[pi3] has 2 lines",
                        STOCK.on("pi3+").config("[pi3]", "gpu_mem=64")),
                Case.of(
                        "section-no-board",
                        STOCK.config("[0x0000ab12]", "[pi3]", "gpu_mem=64"),
                        "config.txt line 3",
                        "(pi4)",
                        STOCK.config("[none]", "gpu_mem=64", "[0x0000ab12]", "gpu_mem=32")),
                Case.of(
                        "section-unknown",
                        STOCK.config("[PI4]", "gpu_mem=64"),
                        "config.txt line 1",
                        "\"[PI4]\"",
                        STOCK.config("[pi4]", "gpu_mem=64", "[gpio4=1]", "[all]")),
                Case.of(
                        "key-set-twice",
                        STOCK.config("arm_freq=1600", "arm_freq=1700"),
                        "config.txt line 1",
                        "replaced by arm_freq=1700 (config.txt line 2)",
                        STOCK.config("arm_freq=1600", "arm_freq=0x640")),
                Case.of(
                        "key-overridden",
                        STOCK.config("arm_freq=1600", "[pi4]", "arm_freq=1700"),
                        "config.txt line 1",
                        "config.txt line 3",
                        STOCK.config("arm_freq=1600", "[pi3]", "arm_freq=1300")),
                Case.of(
                        "include-missing",
                        STOCK.config("include lab.txt"),
                        "config.txt line 1",
                        "include lab.txt",
                        STOCK.config("include lab.txt").including("lab.txt", bytes("gpu_mem=64\n"))),
                Case.of(
                        "include-loop",
                        STOCK.config("include lab.txt").including("lab.txt", bytes("gpu_mem=64\ninclude config.txt\n")),
                        "lab.txt line 2",
                        "comes back",
                        STOCK.config("include lab.txt").including("lab.txt", bytes("gpu_mem=64\n"))),
                Case.of("include-not-followed", rowOfIncludes(10), "part8.txt line 1", "part9.txt", rowOfIncludes(4)));
    }

    static Stream<Case> configFile() {
        TestCard misnamed = STOCK.withoutConfig().with("config.txt.txt", "gpu_mem=64\n");
        CardRead folder = new CardRead(
                STOCK.rest().files(),
                List.of(),
                Optional.of("config.txt is a folder."),
                STOCK.rest().space(),
                List.of(),
                Optional.empty());
        CardRead torn = new CardRead(
                STOCK.rest().files(),
                List.of(new ConfigText(
                        "config.txt",
                        STOCK.content().read().config().get(0).document(),
                        List.of("only 10 of its 20 bytes"))),
                Optional.empty(),
                STOCK.rest().space(),
                List.of(),
                Optional.empty());
        return Stream.of(
                Case.of("config-missing", STOCK.withoutConfig(), "config.txt", "no config.txt", STOCK),
                Case.of("config-missing", STOCK.withoutConfig(), "config.txt", "no config.txt", misnamed),
                Case.of("config-misnamed", misnamed, "config.txt.txt", "\"config.txt.txt\"", STOCK),
                Case.of(
                        "config-misnamed",
                        STOCK.withoutConfig().with("config.txt ", "gpu_mem=64\n"),
                        "config.txt ",
                        "\"config.txt \"",
                        STOCK),
                Case.of(
                        "config-misnamed",
                        STOCK.withoutConfig().with("Config", "gpu_mem=64\n"),
                        "Config",
                        "\"Config\"",
                        STOCK.with("Config.TXT", "gpu_mem=64\n")),
                Case.of(
                        "config-lookalike",
                        STOCK.with("config .txt", ""),
                        "config .txt",
                        "stands beside",
                        STOCK.with("myconfig.txt", "")),
                Case.of(
                        "config-not-plain-text",
                        STOCK.configBytes("gpu_mem=64\n".getBytes(StandardCharsets.UTF_16LE)),
                        "config.txt",
                        "11 of its 22 bytes are zero",
                        STOCK.configBytes(bytes("gpu_mem=64\n\u00e9\n"))),
                Case.of(
                        "config-not-plain-text",
                        STOCK.withoutConfig().rest(folder),
                        "config.txt",
                        "is a folder",
                        STOCK),
                Case.of("config-not-whole", STOCK.rest(torn), "config.txt", "only 10 of its 20 bytes", STOCK),
                Case.of(
                        "config-byte-order-mark",
                        STOCK.configBytes(bytes("\uFEFFgpu_mem=64\n")),
                        "config.txt",
                        "mark",
                        STOCK),
                Case.of(
                        "config-bare-line-ends",
                        STOCK.configBytes(bytes("gpu_mem=64\renable_uart=1\r")),
                        "config.txt",
                        "2 lines end",
                        STOCK.configBytes(bytes("gpu_mem=64\r\nenable_uart=1\r\n"))));
    }

    static Stream<Case> bootFiles() {
        TestCard nothing = STOCK.onItsBoards().without("bootcode.bin").without("kernel8.img");
        return Stream.of(
                Case.of("boots-no-board", nothing, "boot partition", "No known board", STOCK.onItsBoards()),
                Case.of(
                        "kernel-missing",
                        STOCK.without("kernel8.img"),
                        "kernel8.img",
                        "kernel8.img is not on",
                        STOCK.without("kernel.img").without("kernel7l.img")),
                Case.of(
                        "kernel-missing",
                        STOCK.config("arm_64bit=0").without("kernel7l.img"),
                        "kernel7l.img",
                        "kernel7l.img",
                        STOCK.config("arm_64bit=0").without("kernel8.img")),
                Case.of(
                        "kernel-missing",
                        STOCK.config("kernel=lab.img"),
                        "config.txt line 1",
                        "lab.img, which the config file asks for",
                        STOCK.config("kernel=lab.img").with("lab.img", BootFiles.named("kernel8.img", 9000))),
                Case.of(
                        "device-tree-missing",
                        STOCK.config("device_tree=lab.dtb"),
                        "config.txt line 1",
                        "lab.dtb",
                        STOCK.config("device_tree=/bcm2711-pi4.dtb")),
                Case.of(
                        "device-tree-missing",
                        bare("pi2", "bcm2709"),
                        "bcm2709-*.dtb",
                        "bcm2710-*.dtb",
                        STOCK.on("pi2")),
                Case.of(
                        "firmware-missing",
                        STOCK.without("fixup4.dat"),
                        "fixup4.dat",
                        "fixup4.dat",
                        STOCK.without("fixup.dat").without("start.elf")),
                Case.of(
                        "firmware-missing",
                        STOCK.on("pi3").config("start_x=1").without("start_x.elf"),
                        "config.txt line 1",
                        "start_x.elf",
                        STOCK.on("pi3").without("start_x.elf")),
                Case.of(
                        "firmware-missing",
                        STOCK.config("start_file=lab.elf", "fixup_file=fixup4.dat"),
                        "config.txt line 1",
                        "lab.elf",
                        STOCK.on("pi5").without("start4.elf").without("fixup4.dat")),
                Case.of(
                        "bootcode-missing",
                        STOCK.on("pi3").without("bootcode.bin"),
                        "bootcode.bin",
                        "bootcode.bin",
                        STOCK.on("pi4").without("bootcode.bin")),
                Case.of(
                        "overlay-missing",
                        STOCK.config("dtoverlay=lab-arm,speed=2"),
                        "config.txt line 1",
                        "overlays/lab-arm.dtbo",
                        STOCK.config("dtoverlay=wheel-encoder-gpio:pin=4", "dtoverlay=")),
                Case.of(
                        "overlay-missing",
                        STOCK.config("overlay_prefix=more/", "dtoverlay=wheel-encoder-gpio"),
                        "config.txt line 2",
                        "more/wheel-encoder-gpio.dtbo",
                        STOCK.config("overlay_prefix=more/", "dtoverlay=lab-arm")
                                .with("more/lab-arm.dtbo", BootFiles.named("lab-arm.dtbo", 800))),
                Case.of(
                        "initramfs-missing",
                        STOCK.config("initramfs early.gz followkernel"),
                        "config.txt line 1",
                        "early.gz",
                        STOCK.config("initramfs ,early.gz followkernel").with("early.gz", "x")),
                Case.of(
                        "os-prefix-nowhere",
                        STOCK.config("os_prefix=term2/"),
                        "config.txt line 1",
                        "os_prefix=term2/",
                        STOCK.config("os_prefix=term2/")
                                .with("term2/kernel8.img", BootFiles.named("kernel8.img", 9000))
                                .with("term2/bcm2711-pi4.dtb", BootFiles.named("bcm2711-pi4.dtb", 9000))
                                .with("term2/cmdline.txt", "root=/dev/mmcblk0p2\n")));
    }

    static Stream<Case> content() {
        byte[] firmware = BootFiles.named("start4.elf", 8192);
        byte[] tree = BootFiles.named("bcm2711-pi4.dtb", 9000);
        TestCard custom = STOCK.config("kernel=lab.img");
        return Stream.of(
                Case.of(
                        "boot-file-empty",
                        STOCK.with("kernel8.img", ""),
                        "kernel8.img",
                        "no byte",
                        STOCK.with("kernel7l.img", "")),
                Case.of(
                        "boot-file-zero-filled",
                        STOCK.with("start4.elf", new byte[40_000]),
                        "start4.elf",
                        "All of the 10 clusters",
                        STOCK.on("pi3").with("start4.elf", new byte[40_000])),
                Case.of(
                        "boot-file-zero-tail",
                        STOCK.with("start4.elf", Arrays.copyOf(firmware, 40_960)),
                        "start4.elf",
                        "the later half is zero",
                        STOCK.with("start4.elf", firmware)),
                Case.of(
                        "firmware-not-elf",
                        STOCK.with("start4.elf", BootFiles.named("noise", 8192)),
                        "start4.elf",
                        "not as an ELF file",
                        STOCK),
                Case.of(
                        "device-tree-damaged",
                        STOCK.with("bcm2711-pi4.dtb", Arrays.copyOf(tree, 5000)),
                        "bcm2711-pi4.dtb",
                        "has 5000 bytes, but its header says 9000",
                        STOCK),
                Case.of(
                        "device-tree-damaged",
                        STOCK.with("overlays/wheel-encoder-gpio.dtbo", BootFiles.named("noise", 800)),
                        "overlays/wheel-encoder-gpio.dtbo",
                        "not 0xd00dfeed",
                        STOCK),
                Case.of(
                        "kernel-damaged",
                        STOCK.with("kernel8.img", BootFiles.named("noise", 9000)),
                        "kernel8.img",
                        "of no known kind",
                        STOCK.with("kernel8.img", BootFiles.named("kernel8.img", 9000))),
                Case.of(
                        "kernel-damaged",
                        STOCK.with("kernel8.img", BootFiles.named("kernel7l.img", 9000)),
                        "kernel8.img",
                        "a 32-bit image",
                        STOCK),
                Case.of(
                        "kernel-kind-unknown",
                        custom.with("lab.img", BootFiles.named("noise", 9000)),
                        "lab.img",
                        "of no known kind",
                        custom.with("lab.img", BootFiles.named("kernel7.img", 9000))),
                Case.of(
                        "cmdline-missing",
                        STOCK.without("cmdline.txt"),
                        "cmdline.txt",
                        "cmdline.txt is not on",
                        STOCK.without("cmdline.txt").config("cmdline=lab.txt").with("lab.txt", "root=x")),
                Case.of(
                        "cmdline-empty",
                        STOCK.with("cmdline.txt", "\n"),
                        "cmdline.txt",
                        "1 bytes",
                        STOCK.with("cmdline.txt", "root=x")),
                Case.of(
                        "cmdline-empty",
                        STOCK.with("cmdline.txt", new byte[100]),
                        "cmdline.txt",
                        "zeros",
                        STOCK.with("cmdline.txt", "root=x\n\n")),
                Case.of(
                        "cmdline-several-lines",
                        STOCK.with("cmdline.txt", "root=x\nquiet\n"),
                        "cmdline.txt",
                        "has 2 lines",
                        STOCK.with("cmdline.txt", "root=x quiet\r\n")));
    }

    static Stream<Case> start() {
        TestCard waiting = STOCK.with("recovery.bin", "x").with("pieeprom.upd", "x");
        return Stream.of(
                Case.of(
                        "update-waiting-while-tuned",
                        waiting.config("arm_freq=1800"),
                        "recovery.bin",
                        "tuning lines",
                        waiting),
                new Case(
                        "update-waiting-while-tuned",
                        STABILITY_RUN,
                        waiting.config("[pi3]", "arm_freq=1300"),
                        "recovery.bin",
                        "pieeprom.upd",
                        STOCK.config("arm_freq=1800").with("recovery.bin", "x"),
                        STABILITY_RUN),
                Case.of(
                        "update-waiting",
                        waiting,
                        "recovery.bin",
                        "waits on the card",
                        STOCK.with("pieeprom.upd", "x")),
                Case.of(
                        "tryboot-file",
                        STOCK.with("tryboot.txt", ""),
                        "tryboot.txt",
                        "tryboot.txt",
                        STOCK.with("autoboot.txt", "")));
    }

    static Stream<Case> volume() {
        return Stream.of(
                Case.of(
                        "volume-nearly-full",
                        STOCK.rest(volume(49, List.of(), Optional.empty())),
                        "boot partition",
                        "49 of 1000 clusters",
                        STOCK.rest(volume(50, List.of(), Optional.empty()))),
                Case.of(
                        "volume-damaged",
                        STOCK.rest(volume(
                                500,
                                List.of(seen(Severity.BLOCKER, Place.folder("overlays"), "Its chain loops.")),
                                Optional.empty())),
                        "overlays",
                        "Its chain loops.",
                        STOCK),
                Case.of(
                        "volume-doubt",
                        STOCK.rest(volume(
                                500,
                                List.of(seen(Severity.WARNING, Place.Region.PARTITION_TABLE, "The backup is gone.")),
                                Optional.empty())),
                        "partition table",
                        "The backup is gone.",
                        STOCK.rest(volume(
                                500,
                                List.of(seen(Severity.BLOCKER, Place.folder("overlays"), "Its chain loops.")),
                                Optional.empty()))),
                Case.of(
                        "change-cut-short",
                        STOCK.rest(volume(500, List.of(), Optional.of("\"back to stock\" waits."))),
                        "boot partition",
                        "back to stock",
                        STOCK),
                Case.of(
                        "boot-file-not-whole",
                        STOCK.torn("cmdline.txt", "its chain loops"),
                        "cmdline.txt",
                        "its chain loops",
                        STOCK),
                Case.of(
                        "boot-file-not-whole",
                        STOCK.torn("kernel8.img", "only 3 of its 8 clusters"),
                        "kernel8.img",
                        "only 3 of its 8 clusters",
                        STOCK));
    }

    private static Finding seen(Severity severity, Place where, String what) {
        return Finding.of(Rule.of("seen", Rule.always(severity), Fix.NOTHING, "It matters."), where, what);
    }

    private static CardRead volume(long free, List<Finding> health, Optional<String> cutShort) {
        return new CardRead(
                STOCK.rest().files(),
                List.of(),
                Optional.empty(),
                Optional.of(new VolumeSpace(1000, free, 4096)),
                health,
                cutShort);
    }

    /** The card without the device trees of a chip and of the one that could stand for it. */
    private static TestCard bare(String board, String chip) {
        TestCard card = STOCK.on(board);
        for (String path : STOCK.files().keySet()) {
            card = path.startsWith(chip) || path.startsWith("bcm2710") ? card.without(path) : card;
        }
        return card;
    }

    private static TestCard rowOfIncludes(int files) {
        TestCard card = STOCK.config("include part1.txt");
        for (int part = 1; part < files; part++) {
            card = card.including("part" + part + ".txt", bytes("include part" + (part + 1) + ".txt\n"));
        }
        return card.including("part" + files + ".txt", bytes("gpu_mem=64\n"));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
