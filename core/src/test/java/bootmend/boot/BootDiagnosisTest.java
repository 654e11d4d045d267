package bootmend.boot;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.device.RecordingDevice;
import bootmend.fixtures.ChainCard;
import bootmend.fixtures.ChainFiles;
import bootmend.fixtures.SparseDisk;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class BootDiagnosisTest {

    private static final TuningTables TABLES = TuningTables.load();

    private static BoardFacts on(String board) {
        return BoardFacts.of(TABLES.boards().find(board).orElseThrow());
    }

    private static BootChain chain(ChainCard card, String board) throws IOException {
        return OpenedCard.diagnosis(card.build(), on(board)).boards().get(0).chain();
    }

    private static Cause cause(ChainCard card, String board) throws IOException {
        BootChain chain = chain(card, board);
        assertThat(chain.verdict()).isInstanceOf(Verdict.Stops.class);
        return ((Verdict.Stops) chain.verdict()).cause();
    }

    @Test
    void aChainHasEveryLinkOnceInOrder() throws IOException {
        assertThat(chain(ChainCard.full(), "pi4").links().stream().map(BootLink::kind))
                .containsExactly(LinkKind.values());
        assertThat(chain(new ChainCard().config("boot_ramdisk=1\n"), "pi4").links().stream()
                        .map(BootLink::kind))
                .containsExactly(LinkKind.values());
    }

    @Test
    void aLinkSaysWhatItRestsOn() throws IOException {
        BootChain chain = chain(ChainCard.full(), "pi4");
        assertThat(chain.link(LinkKind.KERNEL).found()).singleElement().satisfies(found -> {
            assertThat(found.what()).isEqualTo("kernel8.img");
            assertThat(found.bytes()).isPresent();
            assertThat(found.check()).contains("unpacks to 16384 bytes").contains("checksum fits");
        });
        assertThat(chain.link(LinkKind.FIRMWARE).found().stream().map(Found::what))
                .containsExactly("start4.elf", "fixup4.dat");
        assertThat(chain.link(LinkKind.ROOT).found().get(0).check()).isEqualTo("root=PARTUUID=5c01ab07-02, holds ext4");
        assertThat(chain.link(LinkKind.OVERLAYS).found().stream().map(Found::what))
                .as("the map gives the board's own overlay")
                .containsExactly("overlays/vc4-kms-v3d-pi4.dtbo");
    }

    @Test
    void aWholeCardThatIsTunedSaysSo() throws IOException {
        BootChain tuned = chain(ChainCard.full().config("arm_freq=2200\nforce_turbo=0\n"), "pi4");
        assertThat(tuned.verdict()).isEqualTo(new Verdict.Boots(List.of("arm_freq")));
    }

    @Test
    void theCauseNamesOriginAndRemedy() throws IOException {
        Cause missing = cause(ChainCard.full().remove("start4.elf"), "pi4");
        assertThat(missing.sentence())
                .isEqualTo("start4.elf is not on the card; a board takes start file and fixup file as a pair.");
        assertThat(missing.origin()).isEqualTo(Origin.INCOMPLETE_COPY);
        assertThat(missing.remedy()).isEqualTo(new Remedy.PutFiles(List.of("start4.elf", "fixup4.dat")));

        Cause foreign = cause(ChainCard.full().rootName("PARTUUID=deadbeef-02"), "pi4");
        assertThat(foreign.origin()).isEqualTo(Origin.OTHER_CARD);
        assertThat(foreign.remedy()).isEqualTo(new Remedy.FitRoot("cmdline.txt", "PARTUUID=5c01ab07-02"));

        Cause named = cause(ChainCard.full().config("\nkernel=lab.img\n"), "pi3");
        assertThat(named.origin()).isEqualTo(Origin.WRONG_EDIT);
        assertThat(named.remedy()).isEqualTo(new Remedy.CorrectLine("config.txt", 2));

        Cause bits = cause(ChainCard.full().config("kernel=Image\n").put("Image", ChainFiles.kernel64(8192)), "pi3");
        assertThat(bits.remedy()).isEqualTo(new Remedy.SetKey("arm_64bit", "1"));

        Cause renamed = cause(ChainCard.full().rename("config.txt", "config.txt.txt"), "pi5");
        assertThat(renamed.remedy()).isEqualTo(new Remedy.RenameFile("config.txt.txt", "config.txt"));

        Cause empty = cause(ChainCard.full().put("cmdline.txt", "\nroot=/dev/mmcblk0p2\n"), "pi3");
        assertThat(empty.remedy()).isEqualTo(new Remedy.OneLine("cmdline.txt"));

        ChainCard cut = ChainCard.full();
        Cause ended = cause(cut.damage(disk -> disk.cutOffAt(cut.rootStart() + (1 << 20))), "pi3");
        assertThat(ended.origin()).isEqualTo(Origin.STOPPED_COPY);
        assertThat(ended.remedy()).isEqualTo(new Remedy.CopyAgain());
        assertThat(ended.sentence()).contains("is partition 2, whose file system has 4194304 bytes");

        Cause nothing = cause(ChainCard.full().noRoot(), "pi3");
        assertThat(nothing.remedy()).isEqualTo(new Remedy.WriteAnew());
    }

    @Test
    void damageThatIsNoCutIsLaidToClocksWhereSomeAreSet() throws IOException {
        assertThat(cause(ChainCard.full().flip("kernel8.img"), "pi4").origin()).isEqualTo(Origin.CUT_WRITE);
        assertThat(cause(ChainCard.full().config("arm_freq=2300\n").flip("kernel8.img"), "pi4")
                        .origin())
                .isEqualTo(Origin.HIGH_CLOCK);
        assertThat(cause(ChainCard.full().config("arm_freq=2300\n").cut("kernel8.img", 9000), "pi4")
                        .origin())
                .isEqualTo(Origin.CUT_WRITE);
    }

    @Test
    void anOverlayThatIsMissingDoesNotStopButIsTold() throws IOException {
        BootLink overlays = chain(ChainCard.full().config("dtoverlay=none-such,key=1\n"), "pi3")
                .link(LinkKind.OVERLAYS);
        assertThat(overlays.state()).isEqualTo(LinkState.MISSING);
        assertThat(overlays.stops()).isFalse();
        assertThat(overlays.why()).contains("overlays/none-such.dtbo");
    }

    /** Sources: config_txt/autoboot.adoc, commit 04d84a86; bootflow-eeprom.adoc, commit 33cd51c5. */
    @Test
    void bothPartitionsOfAnABCardAreLookedAt() throws IOException {
        Map<String, byte[]> second = new TreeMap<>(ChainCard.everyBoard());
        second.put("cmdline.txt", ChainCard.commandLine("/dev/mmcblk0p4").getBytes(StandardCharsets.UTF_8));
        Map<String, byte[]> third = new TreeMap<>(second);
        third.remove("start4.elf");
        ChainCard card = new ChainCard()
                .put("autoboot.txt", "[all]\ntryboot_a_b=1\nboot_partition=2\n[tryboot]\nboot_partition=3\n")
                .moreBoot(second)
                .moreBoot(third);
        BoardDiagnosis found =
                OpenedCard.diagnosis(card.build(), on("pi4")).boards().get(0);
        assertThat(found.chain().verdict().word()).isEqualTo("boots");
        assertThat(found.chain().link(LinkKind.PARTITION).found().get(0).what()).isEqualTo("partition 2");
        BootChain once = found.tryOnce().orElseThrow();
        assertThat(once.start()).isEqualTo(BootChain.Start.TRY_ONCE);
        assertThat(once.link(LinkKind.PARTITION).found().get(0).what()).isEqualTo("partition 3");
        assertThat(once.verdict()).isInstanceOf(Verdict.Stops.class);
        BootChain asked = OpenedCard.diagnosis(card.build(), on("pi4").withTryboot(true))
                .boards()
                .get(0)
                .chain();
        assertThat(asked).isEqualTo(once);
    }

    @Test
    void aTryOnceFileIsAStartOfItsOwn() throws IOException {
        ChainCard card = ChainCard.full().put("tryboot.txt", "kernel=gone.img\n");
        BoardDiagnosis found =
                OpenedCard.diagnosis(card.build(), on("pi4")).boards().get(0);
        assertThat(found.chain().verdict().word()).isEqualTo("boots");
        assertThat(found.tryOnce().orElseThrow().verdict().word()).isEqualTo("stops");
        ChainCard section = ChainCard.full().config("[tryboot]\nkernel=gone.img\n");
        assertThat(chain(section, "pi4").verdict().word()).isEqualTo("boots");
    }

    @Test
    void versionsAreThoseInTheFiles() throws IOException {
        ChainCard card = ChainCard.full().put("pieeprom.upd", ChainFiles.bootMemory(524_288, 1_700_000_000L));
        BootDiagnosis found = OpenedCard.diagnosis(card.build(), on("pi4"));
        assertThat(found.versions().get(0).file())
                .as("what the board takes comes first")
                .isEqualTo("start4.elf");
        assertThat(found.versions().get(0).words())
                .contains("0a1b2c3d4 (clean)")
                .contains("10:20:30");
        assertThat(found.versions())
                .filteredOn(version -> version.file().equals("pieeprom.upd"))
                .singleElement()
                .satisfies(version -> assertThat(version.built()).contains(Instant.ofEpochSecond(1_700_000_000L)));
    }

    @Test
    void aVersionThatLiesAcrossTwoReadsIsWhole() throws IOException {
        byte[] bytes = ChainFiles.noise("far", 200_000);
        byte[] text = "\0VC_BUILD_ID_VERSION: feedc0de (clean)\0".getBytes(StandardCharsets.US_ASCII);
        for (int at = 65_000; at < 66_000; at += 13) {
            byte[] file = bytes.clone();
            System.arraycopy(text, 0, file, at, text.length);
            assertThat(FirmwareVersion.in("start.elf", new ArrayBytes(file))
                            .orElseThrow()
                            .words())
                    .as("at %d", at)
                    .isEqualTo("feedc0de (clean)");
        }
    }

    @Test
    void byNamesAloneNoBootFileIsOpened() throws IOException {
        SparseDisk disk = ChainCard.full().build();
        BootTables tables = new BootTables(TABLES);
        RecordingDevice few = new RecordingDevice(disk);
        BootDiagnosis names = BootDiagnosis.of(OpenedCard.of(few), BoardFacts.none(), tables, Depth.NAMES);
        RecordingDevice many = new RecordingDevice(disk);
        BootDiagnosis contents = BootDiagnosis.of(OpenedCard.of(many), BoardFacts.none(), tables, Depth.CONTENTS);
        assertThat(names.versions()).isEmpty();
        assertThat(names.boardIds()).isEqualTo(contents.boardIds());
        assertThat(names.boards())
                .allSatisfy(board -> assertThat(board.chain().verdict().word()).isEqualTo("boots"));
        assertThat(few.reads().size()).isLessThan(50);
        assertThat(many.reads().size()).isGreaterThan(2 * few.reads().size());
    }

    @Test
    void byNamesAloneAKernelThatIsNamedMayBeALoader() throws IOException {
        ChainCard card = ChainCard.full()
                .config("arm_64bit=1\nkernel=loader.bin\n")
                .put("loader.bin", ChainFiles.loader(true))
                .remove("cmdline.txt");
        BootDiagnosis names =
                BootDiagnosis.of(OpenedCard.of(card.build()), on("pi4"), new BootTables(TABLES), Depth.NAMES);
        assertThat(names.boards().get(0).chain().verdict().word()).isEqualTo("unknown");
        assertThat(chain(card, "pi4").verdict().word()).isEqualTo("boots");
    }

    @Test
    void aDeviceTreeIsLostOrTheCardIsForOtherBoards() throws IOException {
        Cause lost = cause(ChainCard.full().remove("bcm2711-rpi-4-b.dtb"), "pi4");
        assertThat(lost.origin()).isEqualTo(Origin.INCOMPLETE_COPY);
        assertThat(lost.remedy()).isEqualTo(new Remedy.PutFiles(List.of("bcm2711-rpi-4-b.dtb")));
        Cause other = cause(ChainCard.full().without("bcm2712.*"), "pi5");
        assertThat(other.origin()).isEqualTo(Origin.OTHER_BOARD);
        assertThat(other.remedy()).isEqualTo(new Remedy.OtherBoard());
    }

    @Test
    void eachFileIsUnpackedOnceForAllBoards() throws IOException {
        SparseDisk disk = ChainCard.full().build();
        BootTables tables = new BootTables(TABLES);
        RecordingDevice one = new RecordingDevice(disk);
        BootDiagnosis.of(OpenedCard.of(one), on("pi3"), tables, Depth.CONTENTS);
        RecordingDevice all = new RecordingDevice(disk);
        BootDiagnosis.of(OpenedCard.of(all), BoardFacts.none(), tables, Depth.CONTENTS);
        assertThat(all.reads().size()).isLessThan(5 * one.reads().size());
    }
}
