package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.NextStep.Allow;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.record.ProfileJob;
import bootmend.request.CardRequest;
import bootmend.workplace.MemoryWorkplace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;

/** What is shown is what is made: the lines shown, applied to the files before, are the files after, and no other file differs. */
class PreviewPropertyTest {

    private static final CardRequest CARD = CardRequest.of(Path.of("/cards/one.img"));

    @Property(tries = 60)
    void shownLinesAppliedToTheFilesBeforeAreTheFilesAfter(
            @ForAll("configs") byte[] config, @ForAll("requests") List<ChangeOrder> orders)
            throws CardException, IOException {
        try (MemoryWorkplace bench = new MemoryWorkplace()) {
            profile(bench);
            SparseDisk disk = card(config);
            bench.insert(CARD.card().toString(), disk);
            ChangeOperation operation = new ChangeOperation(bench.workplace());
            for (ChangeOrder order : orders) {
                Map<String, byte[]> before = files(disk);
                SparseDisk untouched = disk.copy();
                try {
                    ProposedChange shown = operation.workOut(CARD, order);
                    assertThat(disk.differingSectors(untouched)).isEmpty();
                    operation.make(shown).orThrow();
                    assertIsTheChange(shown, before, files(disk));
                } catch (CardException e) {
                    assertThat(e.kind()).isNotEqualTo(CardException.Kind.INTERRUPTED);
                    assertThat(disk.differingSectors(untouched)).isEmpty();
                }
            }
        }
    }

    private static void assertIsTheChange(ProposedChange shown, Map<String, byte[]> before, Map<String, byte[]> after) {
        Map<String, byte[]> expected = new TreeMap<>(before);
        for (FileEdit file : shown.files()) {
            byte[] made = file.applyTo(file.against().map(before::get).orElse(null));
            if (made == null) {
                assertThat(expected.remove(file.path())).isNotNull();
            } else {
                expected.put(file.path(), made);
            }
        }
        assertThat(after.keySet()).isEqualTo(expected.keySet());
        expected.forEach((path, bytes) -> assertThat(after.get(path))
                .as("%s after %s", path, shown.order())
                .isEqualTo(bytes));
    }

    private static void profile(MemoryWorkplace bench) throws CardException, IOException {
        bench.insert("/cards/good.img", MemoryWorkplace.card("[pi4]\narm_freq=1750\nover_voltage=2\n[all]\n"));
        new ProfileJob(bench.workplace())
                .save(
                        CardRequest.of(Path.of("/cards/good.img")),
                        new ProfileJob.Save("cart", "pi4", "", "", "", List.of(), false));
    }

    private static SparseDisk card(byte[] config) throws IOException {
        FatSpec spec = FatSpec.fat16(5000).build();
        SparseDisk disk = spec.emptyDisk();
        new FatBuilder(spec)
                .file("start.elf", new byte[2000])
                .file("config.txt", config)
                .file(
                        "config.txt.bak",
                        "[pi4]\narm_freq=1700\n[all]\ngpu_freq=500\n".getBytes(StandardCharsets.US_ASCII))
                .file("extra.txt", "gpu_freq=600\r\nhdmi_group=1".getBytes(StandardCharsets.US_ASCII))
                .writeTo(disk, 0);
        return disk;
    }

    private static Map<String, byte[]> files(SparseDisk disk) throws IOException {
        FatVolume volume = FatVolume.open(disk);
        Map<String, byte[]> files = new TreeMap<>();
        for (DirectoryEntry entry : volume.root().entries()) {
            if (!entry.folder()) {
                files.put(
                        entry.name().toLowerCase(Locale.ROOT),
                        volume.read(entry, 1 << 20).bytes());
            }
        }
        return files;
    }

    @Provide
    Arbitrary<List<ChangeOrder>> requests() {
        return Arbitraries.<ChangeRequest>of(
                        ChangeRequest.ToStock.PLAIN,
                        new ChangeRequest.ToStock(true, Set.of("arm_boost")),
                        new ChangeRequest.ToProfile("cart", Optional.empty()),
                        new ChangeRequest.Stage("pi4", List.of("arm_freq=1850")),
                        new ChangeRequest.Stage("pi4", List.of("arm_freq=1900", "over_voltage=3")),
                        ChangeRequest.Edit.of("arm_freq=1800", "hdmi_group=2"),
                        ChangeRequest.Edit.of("dtparam=audio=off", "gpu_freq=510"),
                        new ChangeRequest.Edit(
                                List.of("over_voltage=1"),
                                Optional.of("pi4"),
                                Optional.empty(),
                                List.of("1"),
                                List.of("2", "arm_freq=1")),
                        new ChangeRequest.Edit(
                                List.of("arm_freq=1850"), Optional.empty(), Optional.of("pi4"), List.of(), List.of()),
                        new ChangeRequest.ToSettings("other.img", "pi4", Map.of("arm_freq", "1850")),
                        new ChangeRequest.Adopt(),
                        new ChangeRequest.Unstage(),
                        new ChangeRequest.ToEarlier("1", false, Optional.empty()),
                        new ChangeRequest.ToEarlier("2", false, Optional.of("pi4")),
                        new ChangeRequest.ToEarlier("1", true, Optional.empty()),
                        new ChangeRequest.ToEarlier("3", true, Optional.empty()),
                        ChangeRequest.Undo.LAST,
                        ChangeRequest.Undo.to(0),
                        ChangeRequest.Undo.to(1),
                        ChangeRequest.Repair.PLAIN)
                .map(request -> ChangeOrder.of(request).accepting(Allow.BLOCKERS))
                .list()
                .ofMinSize(1)
                .ofMaxSize(6);
    }

    @Provide
    Arbitrary<byte[]> configs() {
        Arbitrary<String> line = Arbitraries.of(
                "arm_freq=2000",
                "over_voltage=6",
                " gpu_freq=500",
                "#arm_freq=1",
                "[pi4]",
                "[all]",
                "[none]",
                "include extra.txt",
                "hdmi_group=1",
                "",
                "# \u00e9",
                "arm_boost=1");
        Arbitrary<String> end = Arbitraries.of("\n", "\r\n", "\r", "");
        Arbitrary<byte[]> text = line.flatMap(words -> end.map(stop -> words + stop))
                .list()
                .ofMaxSize(12)
                .map(lines -> String.join("", lines).getBytes(StandardCharsets.ISO_8859_1));
        Arbitrary<byte[]> marked = text.map(bytes -> {
            byte[] with = new byte[bytes.length + 3];
            with[0] = (byte) 0xEF;
            with[1] = (byte) 0xBB;
            with[2] = (byte) 0xBF;
            System.arraycopy(bytes, 0, with, 3, bytes.length);
            return with;
        });
        Arbitrary<byte[]> any = Arbitraries.bytes().array(byte[].class).ofMaxSize(60);
        Arbitrary<byte[]> wide =
                text.map(bytes -> new String(bytes, StandardCharsets.ISO_8859_1).getBytes(StandardCharsets.UTF_16));
        return Arbitraries.frequencyOf(Tuple.of(6, text), Tuple.of(2, marked), Tuple.of(1, any), Tuple.of(1, wide));
    }
}
