package bootmend.batch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import bootmend.CardException;
import bootmend.page.CutBatchWords;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A batch that did not come to its end is told of, whatever ended it, and whatever stands in its place. */
class BatchJournalTest {

    private static final Instant NOW = Instant.parse("2026-12-01T03:04:05.678Z");
    private static final List<Path> CARDS = IntStream.range(0, 5)
            .mapToObj(i -> Path.of("/cards/c" + i + ".img"))
            .toList();

    @TempDir
    private Path home;

    @Test
    void aBatchThatCameToItsEndLeavesNothingBehind() throws Exception {
        assertThat(run(CARDS, CARDS.size())).isEmpty();

        assertThat(files()).isEmpty();
        assertThat(new CutBatches(home).untold()).isEmpty();
    }

    @Test
    void aBatchThatWasStoppedIsToldOnceWithWhatWasDoneAndNotBegun() throws Exception {
        run(CARDS, 2);

        CutBatch batch = only();
        assertThat(batch.what()).isEqualTo("reset");
        assertThat(batch.began()).isEqualTo(NOW);
        assertThat(batch.done()).containsExactly("/cards/c0.img", "/cards/c1.img");
        assertThat(batch.notBegun()).containsExactly("/cards/c2.img", "/cards/c3.img", "/cards/c4.img");
        assertThat(batch.cut()).isEmpty();

        CutBatches batches = new CutBatches(home);
        batches.told(batch);
        assertThat(batches.untold()).isEmpty();
        assertThat(batches.kept(batch)).exists();
    }

    /** The journal as it stands at each write is what a process that is killed there leaves. */
    @Test
    void whereverItIsCutEachCardIsDoneCutOrNotBegun() throws Exception {
        byte[] whole = journalOfAll();
        String text = new String(whole, StandardCharsets.UTF_8);
        int head = text.indexOf("\nbegun");
        Path folder = Files.createDirectories(home.resolve("batches"));
        for (int end = 0; end <= whole.length; end++) {
            Path file = folder.resolve("20261201-030405-678-00000000.batch");
            Files.write(file, Arrays.copyOf(whole, end));
            List<CutBatch> found = new CutBatches(home).untold();
            if (end < head - 1) {
                assertThat(found)
                        .as("no card was begun before the head was whole, at byte %s", end)
                        .isEmpty();
                continue;
            }
            String written = text.substring(0, end);
            CutBatch batch = found.get(0);
            assertThat(batch.size()).isEqualTo(CARDS.size());
            for (int i = 0; i < CARDS.size(); i++) {
                String card = CARDS.get(i).toString();
                boolean begun = written.contains("\nbegun " + i + " .");
                boolean done = written.contains("\ndone " + i + " .");
                boolean failed = written.contains("\nfailed " + i + " .") || written.contains("\ncut " + i + " .");
                assertThat(batch.notBegun().contains(card))
                        .as("byte %s, card %s", end, i)
                        .isEqualTo(!begun);
                assertThat(batch.done().contains(card))
                        .as("byte %s, card %s", end, i)
                        .isEqualTo(done);
                assertThat(batch.cut().contains(card) || batch.failed().contains(card))
                        .as("byte %s, card %s", end, i)
                        .isEqualTo(begun && !done || failed);
            }
        }
    }

    private byte[] journalOfAll() throws Exception {
        byte[][] seen = new byte[1][];
        BatchJournal journal = BatchJournal.begin(home, "undo", CARDS, NOW);
        Path file = files().get(0);
        CardBatch batch = new CardBatch(1);
        journal.run(
                batch,
                card -> {
                    if (card.equals(CARDS.get(1))) {
                        throw CardException.interrupted("pulled", "Put it in again.", null);
                    }
                    if (card.equals(CARDS.get(2))) {
                        throw CardException.refused("no", "Look at it.");
                    }
                    return card;
                },
                result -> seen[0] = bytes(file));
        return seen[0];
    }

    private static byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void aChangeThatWasCutOnACardIsNamedAsCutAndARefusalAsFailed() throws Exception {
        Path folder = Files.createDirectories(home.resolve("batches"));
        byte[] whole = journalOfAll();
        Files.write(folder.resolve("20261201-030405-678-00000000.batch"), whole);

        CutBatch batch = only();

        assertThat(batch.cut()).containsExactly("/cards/c1.img");
        assertThat(batch.failed()).containsExactly("/cards/c2.img");
        assertThat(CutBatchWords.of(batch, Path.of("/kept")))
                .contains("Cut in the middle, to be recovered before anything else (1): c1.img.")
                .contains("Failed or refused (1): c2.img.");
    }

    @Test
    void aBatchThatStillRunsIsNotTold() throws Exception {
        BatchJournal journal = BatchJournal.begin(home, "reset", CARDS, NOW);
        List<List<CutBatch>> meanwhile = new ArrayList<>();
        journal.run(new CardBatch(1), card -> card, result -> meanwhile.add(new CutBatches(home).untold()));

        assertThat(meanwhile).hasSize(CARDS.size()).allMatch(List::isEmpty);
    }

    @Test
    void namesWithLineEndsAndMarksComeBackAsTheyWere() throws Exception {
        List<Path> odd = Stream.of("/a\nbegun 0 .\n/b.img", "/100%/c%0041.img", "/ \u2028 .", "/\u00e4 .img .")
                .map(Path::of)
                .toList();
        run(odd, 1);

        CutBatch batch = only();
        assertThat(batch.done()).containsExactly(odd.get(0).toString());
        assertThat(batch.notBegun())
                .containsExactlyElementsOf(
                        odd.subList(1, 4).stream().map(Path::toString).toList());
        assertThat(String.join("", CutBatchWords.of(batch, home))).doesNotContain("\n");
    }

    @Test
    @Timeout(20)
    void whatIsNoJournalIsPassedOver() throws Exception {
        Path folder = Files.createDirectories(home.resolve("batches"));
        Random random = new Random(7);
        byte[] whole = journalOfAll();
        for (int i = 0; i < 300; i++) {
            byte[] hostile = whole.clone();
            for (int n = random.nextInt(8); n >= 0; n--) {
                hostile[random.nextInt(hostile.length)] = (byte) random.nextInt(256);
            }
            Path file = folder.resolve("h" + i + ".batch");
            Files.write(file, hostile);
            assertThatCode(() -> new CutBatches(home).untold().forEach(batch -> CutBatchWords.of(batch, home)))
                    .doesNotThrowAnyException();
            Files.delete(file);
        }
        Files.createDirectories(folder.resolve("folder.batch"));
        Files.writeString(
                folder.resolve("count.batch"), "bootmend batch 1 .\n2026-12-01T03:04:05Z 2000000000 reset .\n");
        Files.writeString(folder.resolve("minus.batch"), "bootmend batch 1 .\n2026-12-01T03:04:05Z -1 reset .\n");
        Files.createSymbolicLink(folder.resolve("endless.batch"), Path.of("/dev/zero"));
        if (Files.isExecutable(Path.of("/usr/bin/mkfifo"))) {
            new ProcessBuilder("mkfifo", folder.resolve("pipe.batch").toString())
                    .start()
                    .waitFor();
        }

        assertThat(new CutBatches(home).untold()).isEmpty();
    }

    @Test
    void aDataFolderThatCannotBeWrittenToBeginsNoCard() throws Exception {
        Path full = Files.writeString(home.resolve("batches"), "a file where the folder belongs");

        assertThatThrownBy(() -> BatchJournal.begin(home, "reset", CARDS, NOW))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("could not be noted")
                .matches(e -> ((CardException) e).kind() == CardException.Kind.REFUSED);
        assertThat(full).isRegularFile();
    }

    /** The device of that name has no room, ever. */
    @Test
    void aJournalThatCannotBeAddedToBeginsNoFurtherCard() throws Exception {
        Path none = Path.of("/dev/full");
        assumeTrue(Files.exists(none), "no /dev/full here: skipped");
        List<Path> worked = new ArrayList<>();
        List<CardResult<Path>> results = new ArrayList<>();

        BatchJournal.at(none, CARDS)
                .run(
                        new CardBatch(1),
                        card -> {
                            worked.add(card);
                            return card;
                        },
                        results::add);

        assertThat(worked).isEmpty();
        assertThat(results)
                .hasSize(CARDS.size())
                .allMatch(result -> result.error().isPresent());
    }

    private Optional<CardException> run(List<Path> cards, int before) throws CardException {
        CardBatch batch = new CardBatch(1);
        int[] count = {0};
        return BatchJournal.begin(home, "reset", cards, NOW)
                .run(
                        batch,
                        card -> {
                            if (++count[0] == before && before < cards.size()) {
                                batch.stop();
                            }
                            return card;
                        },
                        result -> {});
    }

    private CutBatch only() {
        List<CutBatch> found = new CutBatches(home).untold();
        assertThat(found).hasSize(1);
        return found.get(0);
    }

    private List<Path> files() throws IOException {
        try (Stream<Path> files = Files.walk(home)) {
            return files.filter(Files::isRegularFile).toList();
        }
    }
}
