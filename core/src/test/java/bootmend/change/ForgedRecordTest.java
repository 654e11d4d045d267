package bootmend.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.fat.SectorChange;
import bootmend.fat.SectorKind;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What lies in place of an undo record: forged with its checksum made anew, cut off, endless, or no plain file. */
class ForgedRecordTest {

    private static final Medium MEDIUM = new Medium("/dev/card", "cid:1b");
    private static final int SECTOR = 512;

    @TempDir
    private Path home;

    private PlannedCard card;
    private SparseDisk before;
    private UndoStore store;

    @BeforeEach
    void card() throws IOException {
        card = PlannedCard.of(FatSpec.fat32(66000).build(), builder -> builder);
        before = card.disk().copy();
        store = new UndoStore(home);
    }

    /** What a forged plan names. */
    enum Forgery {
        PARTITION_TABLE(Plan.Purpose.CHANGE, SectorKind.DATA, 0),
        PARTITION_TABLE_IN_A_REPAIR(Plan.Purpose.REPAIR, SectorKind.BOOT_SECTOR, 0),
        JUST_BEFORE_THE_PARTITION(Plan.Purpose.REPAIR, SectorKind.DATA, PlannedCard.START - SECTOR),
        BOOT_SECTOR(Plan.Purpose.CHANGE, SectorKind.BOOT_SECTOR, PlannedCard.START),
        BOOT_SECTOR_AS_DATA(Plan.Purpose.CHANGE, SectorKind.DATA, PlannedCard.START),
        BOOT_SECTOR_OF_NONSENSE(Plan.Purpose.REPAIR, SectorKind.BOOT_SECTOR, PlannedCard.START),
        BACKUP_BOOT_SECTOR(Plan.Purpose.CHANGE, SectorKind.BOOT_SECTOR, PlannedCard.START + 6 * SECTOR),
        FS_INFO_WHOLE(Plan.Purpose.CHANGE, SectorKind.FS_INFO, PlannedCard.START + SECTOR),
        RESERVED_SECTOR(Plan.Purpose.REPAIR, SectorKind.FS_INFO, PlannedCard.START + 2 * SECTOR),
        HEAD_OF_THE_FAT(Plan.Purpose.CHANGE, SectorKind.FAT, PlannedCard.START + 32 * SECTOR),
        DATA_IN_THE_FAT(Plan.Purpose.CHANGE, SectorKind.DATA, PlannedCard.START + 40 * SECTOR),
        BETWEEN_TWO_SECTORS(Plan.Purpose.CHANGE, SectorKind.FAT, PlannedCard.START + 40 * SECTOR + 8),
        LARGE_SECTOR(Plan.Purpose.CHANGE, SectorKind.FAT, PlannedCard.START + 40 * SECTOR) {
            @Override
            int length() {
                return 4096;
            }
        },
        HUGE_SECTOR(Plan.Purpose.CHANGE, SectorKind.FAT, PlannedCard.START + 40 * SECTOR) {
            @Override
            int length() {
                return 1 << 20;
            }
        },
        NEGATIVE(Plan.Purpose.CHANGE, SectorKind.DATA, -SECTOR),
        BEYOND_EVERYTHING(Plan.Purpose.CHANGE, SectorKind.DATA, Long.MAX_VALUE - SECTOR),
        REPAIR_STEP_IN_A_CHANGE(Plan.Purpose.CHANGE, SectorKind.FAT, PlannedCard.START + 40 * SECTOR) {
            @Override
            PlanStep.Kind step() {
                return PlanStep.Kind.REPAIR_FAT;
            }
        },
        A_FOLDERS(Plan.Purpose.FOLDER, SectorKind.DATA, PlannedCard.START + 40 * SECTOR);

        private final Plan.Purpose purpose;
        private final SectorKind kind;
        private final long offset;

        Forgery(Plan.Purpose purpose, SectorKind kind, long offset) {
            this.purpose = purpose;
            this.kind = kind;
            this.offset = offset;
        }

        int length() {
            return SECTOR;
        }

        PlanStep.Kind step() {
            return PlanStep.Kind.PREPARE;
        }

        /** What the card holds there, and the same with every bit turned over. */
        Plan plan(PlannedCard card, boolean asBegun) throws IOException {
            boolean inside = offset >= 0 && offset < card.disk().getSize() - length();
            byte[] now = inside ? card.disk().toBytes(offset, length()) : new byte[length()];
            byte[] other = new byte[length()];
            for (int i = 0; i < now.length; i++) {
                other[i] = (byte) ~now[i];
            }
            SectorChange change = new SectorChange(kind, offset, asBegun ? other : now, asBegun ? now : other);
            return new Plan(
                    card.id(), purpose, "test", List.of(), List.of(new PlanStep(step(), List.of(change))), Map.of());
        }
    }

    @ParameterizedTest
    @EnumSource
    void noForgedPlanIsCarriedOut(Forgery forgery) throws CardException, IOException {
        // What a repair of a boot sector found there is nonsense by nature; to undo one is to bring it back.
        boolean[] states = forgery == Forgery.BOOT_SECTOR_OF_NONSENSE ? new boolean[1] : new boolean[] {false, true};
        for (boolean begun : states) {
            Plan plan = forgery.plan(card, begun);
            Target target = card.target(card.disk(), MEDIUM);
            UndoRecord record = store.open(plan, MEDIUM, "", Instant.EPOCH);
            Recovery recovery = new Recovery(target, store);
            OpenChange open = new OpenChange(record, OpenChange.Extent.PART, false, List.of());

            assertRefused(() -> new Committer(store, PlannedCard.CLOCK).commit(target, plan));
            assertRefused(() -> recovery.finish(open));
            assertRefused(() -> recovery.undo(open));
            recovery.look();
            History.of(target, store);

            assertThat(card.disk().differingSectors(before)).isEmpty();
            assertThat(store.open()).extracting(UndoRecord::id).contains(record.id());
        }
    }

    @Test
    void stepsThatDoNotFitTogetherAreRefused() throws CardException, IOException {
        Plan whole = card.plan(PlannedCard.OLD, PlannedCard.NEW);
        List<PlanStep> steps = new ArrayList<>(whole.steps());
        steps.add(whole.steps().get(0));
        Plan twice = Plan.ofSectors(card.id(), Plan.Purpose.CHANGE, "test", whole.files(), steps);

        assertRefused(() -> new Committer(store, PlannedCard.CLOCK).commit(card.target(card.disk(), MEDIUM), twice));
    }

    @Test
    void recordsOfNonsenseAreToldAndNothingIsWritten() throws IOException {
        String good = "{\"version\":2,\"created\":\"2026-03-02T08:30:00Z\",\"cardPath\":\"x\",\"mediumKey\":\"\","
                + "\"takesBack\":\"\",\"plan\":";
        for (String line : new String[] {
            "",
            "null",
            "[]",
            "{}",
            good + "null}",
            good + "{\"card\":null,\"purpose\":\"CHANGE\",\"title\":\"x\",\"files\":[],\"steps\":[]}}",
            good + "{\"card\":{},\"purpose\":\"CHANGE\",\"title\":\"x\",\"files\":null,\"steps\":[]}}",
            good + "{\"card\":{},\"purpose\":\"CHANGE\",\"title\":\"x\",\"files\":[null],\"steps\":[]}}",
            good + "{\"card\":{},\"purpose\":\"CHANGE\",\"title\":\"x\",\"files\":[],\"steps\":[{\"kind\":\"PREPARE\","
                    + "\"changes\":[{\"kind\":\"DATA\",\"offset\":0,\"before\":\"AA==\",\"after\":null}]}]}}",
            good + "{\"card\":{},\"purpose\":\"FORMAT\",\"title\":\"x\",\"files\":[],\"steps\":[]}}",
            "{\"version\":0}",
            "[".repeat(5000)
        }) {
            Path file = inPlaceOfARecord();
            Files.writeString(file, line + "\nsha256:" + RecordFormat.sha256(PlannedCard.text(line)) + "\n");
            assertTold(file);
            Files.delete(file);
        }
    }

    @Test
    @Timeout(value = 20, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void whatIsNoPlainFileIsToldAndNotOpened() throws Exception {
        Path file = inPlaceOfARecord();
        Files.createDirectory(file);
        assertTold(file);
        Files.delete(file);

        Path real = Files.writeString(home.resolve("elsewhere"), "x");
        Files.createSymbolicLink(file, real);
        assertTold(file);
        Files.delete(file);

        if (Files.exists(Path.of("/dev/zero"))) {
            Files.createSymbolicLink(file, Path.of("/dev/zero"));
            assertTold(file);
            Files.delete(file);
            Process made = new ProcessBuilder("mkfifo", file.toString()).start();
            assertThat(made.waitFor(10, TimeUnit.SECONDS)).isTrue();
            assertTold(file);
            Files.delete(file);
        }

        try (RandomAccessFile huge = new RandomAccessFile(file.toFile(), "rw")) {
            huge.setLength(1L << 40);
        }
        assertTold(file);
    }

    /** A record of which only the start was written was cut off before its change began. */
    @Test
    void aRecordThatIsCutOffBlocksNothing() throws CardException, IOException {
        Path file = inPlaceOfARecord();
        Plan plan = card.plan(PlannedCard.OLD, PlannedCard.NEW);
        byte[] whole = RecordFormat.write(Instant.EPOCH, MEDIUM, "", plan);
        for (int length = 0; length < whole.length; length += 97) {
            Files.write(file, Arrays.copyOf(whole, length));
            assertThat(new Recovery(card.target(card.disk()), store).look()).isEqualTo(new Interruption.None());
        }
    }

    private Path inPlaceOfARecord() throws IOException {
        Path open = Files.createDirectories(home.resolve("open"));
        return open.resolve(card.id().key() + "_20260302-083000-000000-0badcafe.undo");
    }

    private void assertTold(Path file) throws IOException {
        assertThatThrownBy(() -> new Recovery(card.target(card.disk()), store).look())
                .isInstanceOfSatisfying(CardException.class, e -> {
                    assertThat(e.kind()).isEqualTo(CardException.Kind.REFUSED);
                    assertThat(e).hasMessageContaining(file.toString());
                    assertThat(e.remedy()).endsWith(".");
                });
        assertThat(card.disk().differingSectors(before)).isEmpty();
    }

    private static void assertRefused(ThrowingCallable work) {
        assertThatThrownBy(work).isInstanceOfSatisfying(CardException.class, e -> {
            assertThat(e.kind()).as(e.getMessage()).isEqualTo(CardException.Kind.REFUSED);
            assertThat(e.remedy()).contains("Nothing was written");
        });
    }
}
