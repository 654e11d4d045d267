package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.boot.BoardDiagnosis;
import bootmend.boot.Verdict;
import bootmend.device.PartitionWindow;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fixtures.ChainCard;
import bootmend.fixtures.ChainFiles;
import bootmend.fixtures.SparseDisk;
import bootmend.oracle.Fsck;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.view.DiagnoseJob;
import bootmend.view.KeepJob;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Boot files that are missing or damaged, written from a card where they are whole. */
class GoodFilesJobTest {

    private static final String OVERLAY = "overlays/lab-arm-board.dtbo";
    private static final String CONFIG = "# this card's own\narm_64bit=1\ndtoverlay=lab-arm-board\n";

    @TempDir
    private Path folder;

    private Workplace workplace;
    private Path good;

    @BeforeEach
    void makeGood() throws IOException {
        workplace = Workplace.ofThisComputer(folder.resolve("home"));
        good = write("good.img", card(UnaryOperator.identity()).config("# the good card's\n"));
    }

    private static ChainCard card(UnaryOperator<ChainCard> damage) {
        ChainCard card = new ChainCard()
                .putAll(ChainCard.everyBoard())
                .put(OVERLAY, ChainFiles.nodes(Map.of()))
                .config(CONFIG);
        return damage.apply(card);
    }

    private Path write(String name, ChainCard card) throws IOException {
        Path file = folder.resolve(name);
        card.build().writeTo(file);
        return file;
    }

    static Stream<Arguments> damages() {
        return Stream.<Map.Entry<String, UnaryOperator<ChainCard>>>of(
                        Map.entry("a missing kernel", card -> card.remove("kernel8.img")),
                        Map.entry("an empty kernel", card -> card.put("kernel8.img", new byte[0])),
                        Map.entry(
                                "a zeroed kernel",
                                card -> card.put("kernel8.img", new byte[card.get("kernel8.img").length])),
                        Map.entry("a cut start file", card -> card.cut("start4.elf", 900)),
                        Map.entry("a missing start file", card -> card.remove("start4.elf")),
                        Map.entry("a missing device tree", card -> card.remove("bcm2711-rpi-4-b.dtb")),
                        Map.entry("a missing overlay and its folder", card -> card.without("overlays/.*")),
                        Map.entry(
                                "all of it at once",
                                card -> card.without("overlays/.*")
                                        .remove("fixup4.dat", "bcm2711-rpi-4-b.dtb")
                                        .put("kernel8.img", new byte[0])
                                        .cut("start4.elf", 900)))
                .map(each -> Arguments.of(each.getKey(), each.getValue()));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("damages")
    void theBoardStartsAgainNothingElseChangesAndUndoIsExact(String what, UnaryOperator<ChainCard> damage)
            throws Exception {
        Path broken = write("broken.img", card(damage));
        byte[] before = Files.readAllBytes(broken);
        Map<String, byte[]> files = files(broken);

        ProposedChange change = workOut(broken, good);
        assertThat(Files.readAllBytes(broken)).isEqualTo(before);
        make(broken, good);

        assertThat(verdict(broken)).isInstanceOf(Verdict.Boots.class);
        Map<String, byte[]> after = files(broken);
        Map<String, byte[]> whole = files(good);
        change.files().forEach(file -> files.put(file.path(), whole.get(file.path())));
        assertThat(after.keySet()).isEqualTo(files.keySet());
        files.forEach((path, bytes) -> assertThat(after.get(path)).as(path).isEqualTo(bytes));
        assertThat(new String(after.get("config.txt"), StandardCharsets.US_ASCII))
                .isEqualTo(CONFIG);
        assertThat(Fsck.complaints(bootPartition(broken), folder)).isEmpty();
        assertThat(workOut(broken, good).isNothing()).isTrue();

        new ChangeOperation(workplace)
                .make(CardRequest.of(broken), ChangeOrder.of(ChangeRequest.Undo.LAST), ChangeOperation.Approval.GIVEN)
                .orThrow();
        assertThat(Files.readAllBytes(broken)).isEqualTo(before);
    }

    @Test
    void keptFilesAndAFolderAreGoodToo() throws Exception {
        Path kept = folder.resolve("good.zip");
        new KeepJob(workplace).run(CardRequest.of(good), kept, false);
        Path boot = Files.createDirectory(folder.resolve("boot"));
        for (Map.Entry<String, byte[]> file : files(good).entrySet()) {
            Files.createDirectories(boot.resolve(file.getKey()).getParent());
            Files.write(boot.resolve(file.getKey()), file.getValue());
        }
        for (Path source : List.of(kept, boot)) {
            Path broken = write(
                    "broken-" + source.getFileName() + ".img", card(card -> card.remove("kernel8.img", "start4.elf")));
            make(broken, source);
            assertThat(verdict(broken)).isInstanceOf(Verdict.Boots.class);
        }
    }

    @Test
    void aGoodCardThatIsNotGoodIsRefused() throws Exception {
        Path broken = write("broken.img", card(card -> card.remove("kernel8.img")));
        Path zeroed = write("zeroed.img", card(card -> card.put("kernel8.img", new byte[90_000])));
        Path other = write("other.img", card(card -> card.remove("kernel8.img")));
        refused(broken, zeroed, "is no better");
        refused(broken, other, "has not what this card needs: kernel8.img");
        refused(broken, broken, "the card itself");
        refused(broken, folder.resolve("none.img"), "none.img: ");
    }

    /** The table of clusters must be sound before anything is written by it. */
    @Test
    void damageOfTheVolumeIsRepairedFirst() throws Exception {
        Path broken = write(
                "broken.img",
                card(card -> card.remove("kernel8.img").damage(disk -> {
                    // The second FAT copy's last sectors; source: the boot sector's own counts, at bytes 14, 16 and 22
                    // or 36.
                    byte[] boot = disk.toBytes(ChainCard.bootStart(), 512);
                    int reserved = (boot[14] & 0xFF) | (boot[15] & 0xFF) << 8;
                    int fat = (boot[22] & 0xFF) | (boot[23] & 0xFF) << 8;
                    disk.patch(ChainCard.bootStart() + (reserved + fat) * 512L + 4, new byte[200]);
                    return disk;
                })));
        assertThatThrownBy(() -> workOut(broken, good))
                .isInstanceOfSatisfying(
                        CardException.class, e -> assertThat(e.steps()).contains(NextStep.Plain.REPAIR_CARD));
    }

    @Test
    void theCardsOwnFilesAreTakenOnlyWhereTheyAreNamed() throws Exception {
        Path broken = write("broken.img", card(card -> card.put("cmdline.txt", "")));
        assertThat(workOut(broken, good).isNothing()).isTrue();
        ChangeRequest named =
                new ChangeRequest.FromGood(CardRequest.of(good), Optional.of("pi4"), List.of("cmdline.txt"));
        new ChangeOperation(workplace)
                .make(CardRequest.of(broken), ChangeOrder.of(named), ChangeOperation.Approval.GIVEN)
                .orThrow();
        assertThat(files(broken).get("cmdline.txt")).isEqualTo(files(good).get("cmdline.txt"));
        assertThatThrownBy(() -> new ChangeOperation(workplace)
                        .workOut(
                                CardRequest.of(broken),
                                ChangeOrder.of(new ChangeRequest.FromGood(
                                        CardRequest.of(good), Optional.of("pi4"), List.of("none.bin")))))
                .isInstanceOf(CardException.class);
    }

    @Test
    void aMountedFolderGetsItsFilesThroughTheSystem() throws Exception {
        Path boot = Files.createDirectory(folder.resolve("mounted"));
        for (Map.Entry<String, byte[]> file : files(good).entrySet()) {
            Files.createDirectories(boot.resolve(file.getKey()).getParent());
            Files.write(boot.resolve(file.getKey()), file.getValue());
        }
        Files.delete(boot.resolve("kernel8.img"));
        Files.write(boot.resolve("start4.elf"), new byte[1000]);
        make(boot, good);
        assertThat(Files.readAllBytes(boot.resolve("kernel8.img")))
                .isEqualTo(files(good).get("kernel8.img"));
        assertThat(Files.readAllBytes(boot.resolve("start4.elf")))
                .isEqualTo(files(good).get("start4.elf"));
    }

    private void refused(Path broken, Path from, String words) throws IOException {
        byte[] before = Files.readAllBytes(broken);
        assertThatThrownBy(() -> make(broken, from))
                .isInstanceOf(CardException.class)
                .hasMessageContaining(words);
        assertThat(Files.readAllBytes(broken)).isEqualTo(before);
    }

    private static ChangeOrder from(Path good) {
        return ChangeOrder.of(new ChangeRequest.FromGood(CardRequest.of(good), Optional.of("pi4"), List.of()));
    }

    private ProposedChange workOut(Path card, Path from) throws CardException {
        return new ChangeOperation(workplace).workOut(CardRequest.of(card), from(from));
    }

    private void make(Path card, Path from) throws CardException {
        new ChangeOperation(workplace)
                .make(CardRequest.of(card), from(from), ChangeOperation.Approval.GIVEN)
                .orThrow();
    }

    private Verdict verdict(Path card) throws CardException {
        BoardDiagnosis pi4 = new DiagnoseJob(workplace)
                .run(CardRequest.of(card), BoardRequest.of("pi4"))
                .boards()
                .get(0);
        return pi4.chain().verdict();
    }

    private static SparseDisk bootPartition(Path card) throws IOException {
        byte[] all = Files.readAllBytes(card);
        FatVolume volume = FatVolume.open(window(all));
        int length = Math.toIntExact(volume.geometry().length());
        SparseDisk disk = new SparseDisk(length, 512);
        disk.patch(0, Arrays.copyOfRange(all, (int) ChainCard.bootStart(), (int) ChainCard.bootStart() + length));
        return disk;
    }

    private static PartitionWindow window(byte[] card) throws IOException {
        SparseDisk disk = new SparseDisk(card.length, 512);
        disk.patch(0, card);
        return new PartitionWindow(disk, ChainCard.bootStart(), card.length - ChainCard.bootStart());
    }

    private static Map<String, byte[]> files(Path card) throws IOException {
        FatVolume volume = FatVolume.open(window(Files.readAllBytes(card)));
        Map<String, byte[]> files = new TreeMap<>();
        add(volume, volume.root().entries(), "", files);
        return files;
    }

    private static void add(FatVolume volume, List<DirectoryEntry> entries, String prefix, Map<String, byte[]> files)
            throws IOException {
        for (DirectoryEntry entry : entries) {
            if (entry.folder()) {
                add(volume, volume.list(entry).entries(), prefix + entry.name() + "/", files);
            } else {
                files.put(prefix + entry.name(), volume.read(entry, 64 << 20).bytes());
            }
        }
    }
}
