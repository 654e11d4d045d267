package bootmend.change;

import static bootmend.change.PlannedCard.NEW;
import static bootmend.change.PlannedCard.OLD;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.fixtures.FatSpec;
import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class UndoStoreTest {

    private final UndoStore store =
            new UndoStore(Jimfs.newFileSystem(Configuration.unix()).getPath("/lab/data"));
    private static final Medium MEDIUM = new Medium("/dev/sdx", "cid:1b534d");

    private PlannedCard card;
    private Plan plan;

    @BeforeEach
    void plan() throws CardException, IOException {
        card = PlannedCard.of(FatSpec.fat12(3000).build(), builder -> builder);
        plan = card.plan(OLD, NEW);
    }

    @Test
    void recordComesBackAsItWasWritten() throws CardException, IOException {
        UndoRecord open = open();

        assertThat(store.openFor(card.id())).singleElement().satisfies(read -> {
            assertThat(read).usingRecursiveComparison().isEqualTo(open);
            assertThat(read.state()).isEqualTo(UndoRecord.State.OPEN);
            assertThat(read.cardPath()).isEqualTo("/dev/sdx");
        });
    }

    @Test
    void aRecordThatWasCutOffIsNone() throws CardException, IOException {
        UndoRecord open = open();
        byte[] whole = Files.readAllBytes(open.file());
        for (int length : new int[] {0, 1, 100, whole.length / 2, whole.length - 70, whole.length - 2}) {
            Files.write(open.file(), Arrays.copyOf(whole, length));
            assertThat(store.openFor(card.id()))
                    .as("cut at %d of %d", length, whole.length)
                    .isEmpty();
        }
    }

    @Test
    void aRecordWithAByteChangedIsNone() throws CardException, IOException {
        UndoRecord open = open();
        byte[] bytes = Files.readAllBytes(open.file());
        bytes[bytes.length / 3] ^= 1;
        Files.write(open.file(), bytes);

        assertThat(store.openFor(card.id())).isEmpty();
    }

    @Test
    void aWholeRecordOfAnotherVersionIsNotPassedOver() throws CardException, IOException {
        UndoRecord open = open();
        String line = Files.readString(open.file()).split("\n", 2)[0].replace("\"version\":2", "\"version\":3");
        Files.writeString(
                open.file(), line + "\nsha256:" + RecordFormat.sha256(line.getBytes(StandardCharsets.UTF_8)) + "\n");

        assertThatThrownBy(() -> store.openFor(card.id()))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("later bootmend");
    }

    @Test
    void recordsOfOneMillisecondGetNamesOfTheirOwnInOrder() throws CardException, IOException {
        List<UndoRecord> opened = List.of(open(), open(), open());

        assertThat(store.openFor(card.id()))
                .extracting(UndoRecord::id)
                .containsExactlyElementsOf(opened.stream().map(UndoRecord::id).toList())
                .doesNotHaveDuplicates();
        for (UndoRecord record : opened) {
            store.finish(record);
        }
        assertThat(store.openFor(card.id())).isEmpty();
        assertThat(store.doneFor(card.id()))
                .extracting(UndoRecord::id)
                .containsExactly(
                        opened.get(2).id(), opened.get(1).id(), opened.get(0).id());
    }

    @Test
    void stateIsOneRename() throws CardException, IOException {
        UndoRecord done = store.finish(open());
        assertThat(store.doneFor(card.id())).singleElement().matches(r -> r.state() == UndoRecord.State.DONE);

        store.markTakenBack(done);

        assertThat(store.doneFor(card.id()))
                .singleElement()
                .matches(r -> r.state() == UndoRecord.State.UNDONE && r.id().equals(done.id()));
        assertThat(done.file()).doesNotExist();
    }

    @Test
    void recordsOfOtherCardsAreNotGiven() throws CardException, IOException {
        open();
        CardId own = card.id();

        assertThat(store.openFor(
                        new CardId(own.serial(), own.volumeStart(), own.volumeLength(), own.clusterCount() + 1)))
                .isEmpty();
        assertThat(store.openFor(
                        new CardId(own.serial() + 1, own.volumeStart(), own.volumeLength(), own.clusterCount())))
                .as("a repair that was cut may have left another serial number")
                .hasSize(1);
        assertThat(store.doneFor(own)).isEmpty();
    }

    @Test
    void aCardsTextsMakeNoPath() {
        assertThat(new CardId(0xFFFFFFFFL, 0, Long.MAX_VALUE, 3).key()).matches("[0-9a-f-]+");
    }

    @Test
    void oldRecordsAreDroppedBeyondTheNewestHundredOfEachMediumAlone() throws CardException, IOException {
        Path done = manyOldRecords("aaaaaaaaaaaa", 130);
        manyOldRecords("bbbbbbbbbbbb", 60);

        // One that has not looked through the records yet.
        UndoStore next = new UndoStore(done.getParent().getParent());
        UndoRecord finished = next.finish(next.open(plan, MEDIUM, "", PlannedCard.CLOCK.instant()));

        assertThat(finished.file()).exists();
        assertThat(named(done, ".maaaaaaaaaaaa.")).hasSize(100).contains("20200101-000000-000129-00000000");
        assertThat(named(done, ".mbbbbbbbbbbbb.")).as("a sister's records").hasSize(60);
    }

    /** Another worker of a batch undid a sister's change and moved its record between the list and the look. */
    @Test
    void aRecordThatIsMovedMeanwhileKeepsNoChangeFromBeingDone() throws CardException, IOException {
        Path done = manyOldRecords("aaaaaaaaaaaa", 130);
        UndoStore beside = new UndoStore(done.getParent().getParent(), new MovingRecords());

        UndoRecord finished = beside.finish(beside.open(plan, MEDIUM, "", PlannedCard.CLOCK.instant()));

        assertThat(finished.file()).exists();
    }

    /** Every record that is looked at is gone by then. */
    private static final class MovingRecords implements RecordFiles {

        private final RecordFiles below = new RecordFiles.OfThisComputer();

        @Override
        public void create(Path file, byte[] bytes) throws IOException {
            below.create(file, bytes);
        }

        @Override
        public void move(Path from, Path to) throws IOException {
            below.move(from, to);
        }

        @Override
        public void delete(Path file) throws IOException {
            below.delete(file);
        }

        @Override
        public byte[] read(Path file, int most) throws IOException {
            return below.read(file, most);
        }

        @Override
        public List<Path> list(Path folder) throws CardException, IOException {
            return below.list(folder);
        }

        @Override
        public Instant lastWritten(Path file) throws IOException {
            below.delete(file);
            return below.lastWritten(file);
        }
    }

    private Path manyOldRecords(String tag, int count) throws CardException, IOException {
        Path done = store.finish(open()).file().getParent();
        for (int i = 0; i < count; i++) {
            Path file = done.resolve(String.format("20200101-000000-%06d-00000000.m%s.undo", i, tag));
            Files.createFile(file);
            Files.setLastModifiedTime(file, FileTime.from(Instant.parse("2020-01-01T00:00:00Z")));
        }
        return done;
    }

    private static List<String> named(Path folder, String part) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.contains(part))
                    .map(name -> name.substring(0, name.indexOf('.')))
                    .toList();
        }
    }

    private UndoRecord open() throws CardException {
        return store.open(plan, MEDIUM, "", PlannedCard.CLOCK.instant());
    }
}
