package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.device.CardSource;
import bootmend.device.FaultingDevice;
import bootmend.device.PartitionWindow;
import bootmend.finding.Finding;
import bootmend.fixtures.DamagedCard;
import bootmend.fixtures.DamagedCards;
import bootmend.fixtures.DemoCard;
import bootmend.fixtures.DemoCards;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatLayout;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.oracle.Fsck;
import bootmend.request.CardRequest;
import bootmend.view.CardView;
import bootmend.view.ShowJob;
import bootmend.workplace.MemoryWorkplace;
import bootmend.workplace.Workplace;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Every damaged card through repair, with {@code fsck.fat -n} as the judge of what is repaired. */
class RepairJobTest {

    private static final String REPAIRS = "/bootmend/job/repairs.csv";
    private static final String PATH = "/cards/lab.img";
    private static final CardRequest CARD = CardRequest.of(Path.of(PATH));
    private static final ChangeRequest.Repair FREE_LOST = new ChangeRequest.Repair(true);

    @TempDir
    private Path folder;

    private final MemoryWorkplace bench = new MemoryWorkplace();

    @AfterEach
    void close() throws IOException {
        bench.close();
    }

    @ParameterizedTest
    @CsvFileSource(resources = REPAIRS)
    void repairsWhatNeedsNoGuess(String id, String findings, String repaired, String concerned)
            throws CardException, IOException {
        DamagedCard damaged = DamagedCards.card(id);
        SparseDisk card = damaged.disk().copy();
        bench.insert(PATH, card);

        Set<String> found = repair(FREE_LOST, repaired.equals("yes"));

        assertThat(String.join("+", found)).isEqualTo(findings.equals("none") ? "" : findings);
        if (repaired.equals("yes")) {
            assertThat(Fsck.complaints(card, damaged.layout(), folder)).isEmpty();
        }
        othersAreWhole(card, damaged, List.of(concerned.split("\\+")));

        SparseDisk once = card.copy();
        assertThat(isNothing()).as("a second repair").isTrue();
        if (!once.differingSectors(damaged.disk()).isEmpty()) {
            bench.undo(PATH, ChangeRequest.Undo.LAST);
        }
        assertThat(card.differingSectors(damaged.disk())).as("after undo").isEmpty();
    }

    @Test
    void everyDamageIsRepaired() throws IOException {
        List<String> asked = new ArrayList<>();
        try (var in = RepairJobTest.class.getResourceAsStream(REPAIRS)) {
            new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#"))
                    .forEach(line -> asked.add(line.substring(0, line.indexOf(','))));
        }
        assertThat(DamagedCards.ids()).containsExactlyElementsOf(asked);
    }

    @Test
    void findsNothingOnHealthyCards() throws CardException, IOException {
        for (DemoCard demo : DemoCards.all()) {
            bench.insert(PATH, DemoCards.build(demo));
            {
                TriedChange change = TriedChange.of(bench.workplace(), CARD, FREE_LOST);
                assertThat(change.findings()).as(demo.fileName()).isEmpty();
                assertThat(change.isNothing()).isTrue();
            }
        }
        for (String id : List.of("chain-loop", "dirty-bit-fat16", "fat-first-copy-behind", "gpt-first-header-bad")) {
            bench.insert(PATH, DamagedCards.card(id).healthy());
            assertThat(repair(FREE_LOST, true)).isEmpty();
            assertThat(isNothing()).isTrue();
        }
    }

    /** The word processor's file, the file under its wrong name and the lost size all come back to the bytes they were. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "config-utf16",
                "config-utf16-no-mark",
                "config-utf16-big-endian",
                "config-utf8-mark",
                "config-cr-only",
                "config-typographic-quotes",
                "config-txt-txt",
                "config-odd-case",
                "config-no-extension",
                "long-name-torn",
                "chain-without-size",
                "size-over-4-gib",
                "chain-longer-than-size"
            })
    void givesTheConfigFileBack(String id) throws CardException, IOException {
        DamagedCard damaged = DamagedCards.card(id);
        SparseDisk card = damaged.disk().copy();
        bench.insert(PATH, card);

        repair(ChangeRequest.Repair.PLAIN, true);

        assertThat(CardFiles.of(card, damaged.layout()).get("config.txt"))
                .isEqualTo(CardFiles.of(damaged.healthy(), damaged.layout()).get("config.txt"));
        CardView view = new ShowJob(bench.workplace()).run(CARD);
        assertThat(view.config().orElseThrow().path()).isEqualTo("config.txt");
        assertThat(view.notes()).isEmpty();
    }

    @Test
    void lostClustersAreFreedOnlyWhenAskedFor() throws CardException, IOException {
        SparseDisk card = DamagedCards.card("lost-clusters").disk();
        bench.insert(PATH, card);
        SparseDisk before = card.copy();

        {
            TriedChange change = TriedChange.of(bench.workplace(), CARD, ChangeRequest.Repair.PLAIN);
            assertThat(change.leavesDamage()).isTrue();
            // FSInfo counts them as free; the FAT is what counts, so FSInfo alone is put right.
            assertThat(change.plan().sectorsByKind()).containsExactly(Map.entry("FSInfo", 1));
            change.apply();
        }
        assertThat(card.differingSectors(before)).hasSize(1);
    }

    @Test
    void theMarkOfAVolumeInUseStaysWhileSomethingIsLeft() throws CardException, IOException {
        DamagedCard damaged = DamagedCards.card("cross-linked");
        SparseDisk card = damaged.disk();
        card.patch(damaged.volumeOffset() + 0x41, (byte) 1);
        bench.insert(PATH, card);

        {
            TriedChange change = TriedChange.of(bench.workplace(), CARD, FREE_LOST);
            assertThat(change.findings()).extracting(Finding::id).contains("dirty-mark", "cross-linked");
            assertThat(change.findings()).noneMatch(Finding::isRepaired);
            assertThat(change.isNothing()).isTrue();
        }
    }

    @Test
    void crossLinkedFilesNameEachOther() throws CardException, IOException {
        bench.insert(PATH, DamagedCards.card("cross-linked").disk());
        {
            TriedChange change = TriedChange.of(bench.workplace(), CARD, ChangeRequest.Repair.PLAIN);
            assertThat(change.findings())
                    .filteredOn(finding -> finding.id().equals("cross-linked"))
                    .anySatisfy(finding -> {
                        assertThat(finding.where().words()).isEqualTo("config.txt");
                        assertThat(finding.what()).contains("kernel8.img");
                    })
                    .anySatisfy(finding -> {
                        assertThat(finding.where().words()).isEqualTo("kernel8.img");
                        assertThat(finding.what()).contains("config.txt");
                    });
        }
    }

    @Test
    void severalFilesThatMayBeTheConfigFileAreLeftAlone() throws CardException, IOException {
        SparseDisk card = card(FatItem.file("config.txt.txt", new byte[10]), FatItem.file("config", new byte[10]));
        bench.insert(PATH, card);
        {
            TriedChange change = TriedChange.of(bench.workplace(), CARD, ChangeRequest.Repair.PLAIN);
            assertThat(change.findings()).singleElement().satisfies(finding -> {
                assertThat(finding.id()).isEqualTo("config-misnamed");
                assertThat(finding.isRepaired()).isFalse();
                assertThat(finding.what()).contains("config.txt.txt, config");
            });
            assertThat(change.isNothing()).isTrue();
        }
    }

    /** A rename over two sectors writes the short entry first, so that a cut in between leaves the file under its name. */
    @Test
    void aNameOverTwoSectorsIsSwitchedByItsShortEntry() throws CardException, IOException {
        List<FatItem> items = new ArrayList<>();
        for (int i = 0; i < 14; i++) {
            items.add(FatItem.file("F" + i + ".BIN", new byte[1]));
        }
        items.add(FatItem.file("config.txt.txt", "arm_freq=2000\n".getBytes(StandardCharsets.US_ASCII)));
        SparseDisk card = card(items.toArray(FatItem[]::new));
        BlockDevice failing = FaultingDevice.atWrite(card, 2);
        Workplace workplace = new Workplace(
                bench.home(),
                Clock.systemUTC(),
                (path, forChanging) -> CardSource.of(path, new PartitionWindow(failing, 0, card.getSize()))
                        .keyed(MemoryWorkplace.keyOf(card)));

        {
            TriedChange change = TriedChange.of(workplace, CARD, ChangeRequest.Repair.PLAIN);
            assertThat(change.plan().steps())
                    .extracting(PlanView.Step::words)
                    .containsExactly("give the config file its name", "give the config file its name");
            assertThatThrownBy(change::apply).isInstanceOf(CardException.class).hasMessageContaining("interrupted");
        }

        bench.insert(PATH, card);
        assertThat(new ShowJob(bench.workplace()).run(CARD).tuning()).hasSize(1);
        try (OpenRecovery recovery = new RecoverJob(bench.workplace()).begin(CARD)) {
            recovery.finish();
        }
        assertThat(new ShowJob(bench.workplace()).run(CARD).notes()).isEmpty();
    }

    @Test
    void aWrongNameAndAWrongFormAreRepairedTogether() throws CardException, IOException {
        String text = "# cart 3\narm_freq=2000\n";
        SparseDisk card = card(FatItem.file("config.txt.txt", ("\uFEFF" + text).getBytes(StandardCharsets.UTF_16LE)));
        SparseDisk before = card.copy();
        bench.insert(PATH, card);

        assertThat(repair(ChangeRequest.Repair.PLAIN, true)).containsExactly("config-misnamed", "config-utf16");

        assertThat(new ShowJob(bench.workplace())
                        .run(CARD)
                        .config()
                        .orElseThrow()
                        .bytes())
                .isEqualTo(text.length());
        bench.undo(PATH, ChangeRequest.Undo.LAST);
        assertThat(card.differingSectors(before)).isEmpty();
    }

    @Test
    void aRepairIsTakenBackAfterALaterChangeWas() throws CardException, IOException {
        SparseDisk card = DamagedCards.card("config-cr-only").disk();
        SparseDisk before = card.copy();
        bench.insert(PATH, card);
        repair(ChangeRequest.Repair.PLAIN, true);
        bench.reset(PATH);
        assertThat(new HistoryJob(bench.workplace()).run(CARD).changes())
                .extracting(HistoryEntry::title)
                .containsExactly("back to stock", "repair");

        bench.undo(PATH, ChangeRequest.Undo.LAST);
        bench.undo(PATH, ChangeRequest.Undo.LAST);

        assertThat(card.differingSectors(before)).isEmpty();
    }

    /** The boot sector still reads, but its cluster size is another volume's; the backup and the files tell. */
    @Test
    void theBackupWinsWhereItAloneFitsTheFiles() throws CardException, IOException {
        DamagedCard base = DamagedCards.card("dirty-bits-fat32");
        SparseDisk card = base.healthy();
        card.patch(base.volumeOffset() + 13, (byte) 2);
        SparseDisk before = card.copy();
        bench.insert(PATH, card);

        assertThat(repair(ChangeRequest.Repair.PLAIN, true)).containsExactly("boot-sector-damaged");

        assertThat(Fsck.complaints(card, base.layout(), folder)).isEmpty();
        bench.undo(PATH, ChangeRequest.Undo.LAST);
        assertThat(card.differingSectors(before)).isEmpty();
    }

    /** Without a backup nothing says what the right cluster size is: cutting chains to fit the wrong one would ruin them. */
    @ParameterizedTest
    @ValueSource(ints = {2, 4, 16})
    void repairsNoFileByABootSectorThatDoesNotFit(int sectorsPerCluster) throws CardException, IOException {
        SparseDisk card = DamagedCards.card("dirty-bit-fat16").healthy();
        card.patch(13, (byte) sectorsPerCluster);
        bench.insert(PATH, card);

        {
            TriedChange change = TriedChange.of(bench.workplace(), CARD, FREE_LOST);
            assertThat(change.findings()).extracting(Finding::id).contains("beyond-belief");
            assertThat(change.leavesDamage()).isTrue();
            assertThat(change.isNothing()).isTrue();
        }
    }

    private static SparseDisk card(FatItem... items) throws IOException {
        FatSpec spec = FatSpec.fat16(5000).rootEntries(512).build();
        SparseDisk disk = spec.emptyDisk();
        FatBuilder builder = new FatBuilder(spec);
        for (FatItem item : items) {
            builder.add("", item);
        }
        builder.writeTo(disk, 0);
        return disk;
    }

    /** Repairs the card and gives the ids of what was found, each once, in order. */
    private Set<String> repair(ChangeRequest.Repair request, boolean repairsAll) throws CardException, IOException {
        {
            TriedChange change = TriedChange.of(bench.workplace(), CARD, request);
            assertThat(change.leavesDamage())
                    .as("damage is left: %s", change.findings())
                    .isEqualTo(!repairsAll);
            if (!change.isNothing()) {
                change.apply();
            }
            return new LinkedHashSet<>(
                    change.findings().stream().map(Finding::id).toList());
        }
    }

    private boolean isNothing() throws CardException, IOException {
        {
            TriedChange change = TriedChange.of(bench.workplace(), CARD, FREE_LOST);
            return change.isNothing();
        }
    }

    private static void othersAreWhole(SparseDisk card, DamagedCard damaged, List<String> concerned)
            throws IOException {
        if (concerned.contains("*")) {
            return;
        }
        FatLayout layout = damaged.layout();
        Map<String, ByteBuffer> healthy = new TreeMap<>(CardFiles.of(damaged.healthy(), layout));
        healthy.keySet()
                .removeIf(path -> concerned.stream()
                        .anyMatch(item -> item.endsWith("*")
                                ? path.startsWith(item.substring(0, item.length() - 1))
                                : path.equals(item)));
        assertThat(healthy).isNotEmpty();
        assertThat(CardFiles.of(card, layout)).containsAllEntriesOf(healthy);
    }
}
