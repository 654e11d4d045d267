package bootmend.boot;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.fixtures.ChainCard;
import bootmend.fixtures.ChainFiles;
import bootmend.fixtures.SparseDisk;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;

/** Whatever stands on a card, a diagnosis ends, and says what it says in words that are safe to show. */
class HostileBootTest {

    private static final BootTables TABLES = new BootTables(TuningTables.load());

    @Test
    void looksEndWithAnAnswerWhateverTheBytes() throws IOException {
        SplittableRandom random = new SplittableRandom(7);
        List<byte[]> seeds = List.of(
                ChainFiles.startFile("x"),
                ChainFiles.kernel64(4096),
                ChainFiles.gzippedKernel64(4096),
                ChainFiles.kernel32(3000),
                ChainFiles.deviceTree("x"),
                ChainFiles.nodes(Map.of("a", Map.of("b", "c"))),
                ChainFiles.cpio(Map.of("init", new byte[400])),
                ChainFiles.initramfs(),
                new byte[] {0x28, (byte) 0xB5, 0x2F, (byte) 0xFD, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0},
                new byte[] {0x02, 0x21, 0x4C, 0x18, 5, 0, 0, 0, 1, 2, 3, 4, 5, 9, 9},
                new byte[] {(byte) 0xFD, '7', 'z', 'X', 'Z', 0, 0, 1, 0x69, 0x22, (byte) 0xDE, 0x36, 2, 0});
        for (int i = 0; i < 6000; i++) {
            byte[] bytes = seeds.get(i % seeds.size()).clone();
            for (int changes = random.nextInt(1, 12); changes > 0; changes--) {
                // Most in the header, where counts and offsets stand.
                int at = random.nextInt(random.nextBoolean() ? Math.min(96, bytes.length) : bytes.length);
                bytes[at] = (byte) (random.nextBoolean() ? 0xFF : random.nextInt(256));
            }
            ArrayBytes file =
                    ArrayBytes.cut(bytes, random.nextInt(4) == 0 ? random.nextInt(bytes.length) : bytes.length);
            for (FileLook look : List.of(
                    ElfLook.of(file),
                    KernelLook.of(file).look(),
                    FlatTree.of(file).look(),
                    InitramfsLook.of(file),
                    ZeroSpots.in(file, "a file", ""))) {
                assertThat(look.state()).isNotEqualTo(LinkState.MISSING);
            }
            FirmwareVersion.in("x", file);
        }
    }

    @Test
    void aCardWithWrongBytesAnywhereIsDiagnosedOrRefused() throws IOException {
        SplittableRandom random = new SplittableRandom(11);
        SparseDisk healthy = ChainCard.full()
                .config("initramfs early.gz followkernel\nos_prefix=one/\n[pi4]\ninclude a.txt\nstart_x=1\n")
                .put("early.gz", ChainFiles.initramfs())
                .build();
        int told = 0;
        for (int i = 0; i < 250; i++) {
            SparseDisk disk = healthy.copy();
            for (int changes = random.nextInt(1, 60); changes > 0; changes--) {
                long room = random.nextInt(3) == 0 ? 1024 : ChainCard.bootStart() + 200_000;
                disk.patch(random.nextLong(room), (byte) random.nextInt(256));
            }
            try {
                BootDiagnosis found = BootDiagnosis.of(OpenedCard.of(disk), BoardFacts.none(), TABLES, Depth.CONTENTS);
                found.boards().forEach(board -> assertSafe(board.chain()));
                told++;
            } catch (IOException e) {
                assertThat(e).hasCauseInstanceOf(CardException.class);
            }
        }
        assertThat(told).isGreaterThan(100);
    }

    @Test
    void namesAndValuesFromTheCardAreMadeVisible() throws IOException {
        ChainCard card = ChainCard.full()
                .config("kernel=\u001b[31mred\u202e.img\ndtoverlay=\u001b]0;x\u0007\n")
                .rootName("LABEL=\u001b[2J\u202e");
        for (String board : List.of("pi3", "pi4", "pi5")) {
            var facts = BoardFacts.of(TuningTables.load().boards().find(board).orElseThrow());
            assertSafe(OpenedCard.diagnosis(card.build(), facts).boards().get(0).chain());
        }
        var pi4 = BoardFacts.of(TuningTables.load().boards().find("pi4").orElseThrow());
        assertSafe(OpenedCard.diagnosis(
                        ChainCard.full().rootName("LABEL=\u001b[2J").build(), pi4)
                .boards()
                .get(0)
                .chain());
    }

    private static void assertSafe(BootChain chain) {
        chain.links().forEach(link -> assertThat(link.why()).doesNotContainPattern("[\\x00-\\x1F\\x7F\\u202E]"));
        if (chain.verdict() instanceof Verdict.Stops stops) {
            assertThat(stops.cause().sentence())
                    .doesNotContainPattern("[\\x00-\\x1F\\x7F\\u202E]")
                    .endsWith(".");
        }
    }

    @Test
    void aGzipFileThatUnpacksWithoutEndIsNotFollowed() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
            byte[] zeros = new byte[1 << 20];
            for (int i = 0; i < 40; i++) {
                gzip.write(zeros);
            }
        }
        GzipLook look = GzipLook.of(new ByteArrayInputStream(out.toByteArray()), 8 << 20);
        assertThat(look.look().state()).isEqualTo(LinkState.UNKNOWN);
        assertThat(look.unpacked()).isLessThan(9 << 20);
    }

    @Test
    void aBootRamdiskThatHoldsItselfEnds() throws IOException {
        Map<String, byte[]> inside = new TreeMap<>(ChainCard.everyBoard());
        inside.keySet().removeIf(path -> !path.matches("start4.elf|fixup4.dat|bcm2711.*|kernel8.img|cmdline.txt"));
        inside.put("config.txt", "boot_ramdisk=1\n".getBytes(StandardCharsets.UTF_8));
        ChainCard card = new ChainCard().config("boot_ramdisk=1\n").put("boot.img", ChainCard.ramdisk(inside));
        var pi4 = BoardFacts.of(TuningTables.load().boards().find("pi4").orElseThrow());
        assertThat(OpenedCard.diagnosis(card.build(), pi4)
                        .boards()
                        .get(0)
                        .chain()
                        .verdict()
                        .word())
                .isEqualTo("boots");
    }

    @Test
    void aThousandSettingsAreBounded() throws IOException {
        StringBuilder config = new StringBuilder();
        for (int i = 0; i < 1000; i++) {
            config.append("[gpio")
                    .append(i % 28)
                    .append("=1]\nkernel=k")
                    .append(i)
                    .append(".img\nos_prefix=p")
                    .append(i)
                    .append("/\ncmdline=c")
                    .append(i)
                    .append("\nstart_file=s")
                    .append(i)
                    .append(".elf\nfixup_file=f")
                    .append(i)
                    .append(".dat\narm_64bit=")
                    .append(i % 3)
                    .append("\ndtoverlay=o")
                    .append(i)
                    .append("\ninitramfs i")
                    .append(i)
                    .append(" followkernel\n");
        }
        BootDiagnosis found =
                OpenedCard.diagnosis(ChainCard.full().config(config.toString()).build(), BoardFacts.none());
        assertThat(found.boards()).hasSize(18);
        assertThat(found.boards().get(0).chain().verdict().word()).isEqualTo("unknown");
    }
}
