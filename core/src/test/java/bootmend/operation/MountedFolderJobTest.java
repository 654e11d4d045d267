package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import bootmend.CardException;
import bootmend.StepNames;
import bootmend.finding.Finding;
import bootmend.finding.Purpose;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.view.CardView;
import bootmend.view.CheckJob;
import bootmend.view.CheckRequest;
import bootmend.view.CheckView;
import bootmend.view.ShowJob;
import bootmend.view.TuningView;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every job on a folder as the system mounts a boot partition, but on whatever file system this computer has. */
class MountedFolderJobTest {

    private static final String CONFIG = "# cart\narm_freq=2100\r\ninclude LAB/Extra.TXT\nover_voltage=2\n";
    private static final String EXTRA = "gpu_freq=600\n";

    @TempDir
    private Path computer;

    private Path folder;
    private Workplace workplace;
    private CardRequest request;

    @BeforeEach
    void mount() throws CardException, IOException {
        folder = Files.createDirectories(computer.resolve("boot"));
        Files.createDirectories(folder.resolve("lab"));
        write("CONFIG.TXT", CONFIG);
        write("lab/extra.txt", EXTRA);
        write("start.elf", "firmware");
        workplace = Workplace.ofThisComputer(computer.resolve("records"));
        request = CardRequest.of(folder);
    }

    @Test
    void showsTheFolderAsACard() throws CardException, IOException {
        CardView view = new ShowJob(workplace).run(request);

        assertThat(view.kind()).isEqualTo("mounted folder");
        assertThat(view.partition().isMounted()).isTrue();
        assertThat(view.tuning())
                .extracting(TuningView::file, TuningView::key)
                .containsExactly(
                        tuple("config.txt", "arm_freq"),
                        tuple("config.txt", "over_voltage"),
                        tuple("LAB/Extra.TXT", "gpu_freq"));
    }

    @Test
    void checksTheFolder() throws CardException, IOException {
        CheckView view = new CheckJob(workplace).run(new CheckRequest(request, Purpose.SHIP, BoardRequest.of("pi4")));

        assertThat(view.findings()).extracting(Finding::id).contains("tuning-line-active");
    }

    @Test
    void aResetNamesFilesAndIsTakenBackToTheSameBytes() throws CardException, IOException {
        {
            TriedChange change = TriedChange.of(workplace, request, ChangeRequest.ToStock.PLAIN);
            assertThat(change.plan().ofFolder()).isTrue();
            assertThat(change.plan().files()).containsExactly("config.txt", "LAB/Extra.TXT");
            assertThat(change.plan().sectorsWritten()).isZero();
            assertThat(change.apply()).isInstanceOf(Made.InFolder.class);
        }
        assertThat(read("CONFIG.TXT")).isEqualTo("# cart\n#arm_freq=2100\r\ninclude LAB/Extra.TXT\n#over_voltage=2\n");
        assertThat(read("lab/extra.txt")).isEqualTo("#gpu_freq=600\n");
        assertThat(names()).containsExactly("CONFIG.TXT", "lab", "lab/extra.txt", "start.elf");
        assertThat(new HistoryJob(workplace).run(request).changes())
                .singleElement()
                .satisfies(entry -> assertThat(entry.lines()).hasSize(3));
        {
            TriedChange again = TriedChange.of(workplace, request, ChangeRequest.ToStock.PLAIN);
            assertThat(again.isNothing()).isTrue();
        }

        {
            TriedChange back = TriedChange.of(workplace, request, ChangeRequest.Undo.LAST);
            back.apply();
        }
        assertThat(read("CONFIG.TXT")).isEqualTo(CONFIG);
        assertThat(read("lab/extra.txt")).isEqualTo(EXTRA);
        assertThat(new HistoryJob(workplace).run(request).changes()).hasSize(2);
    }

    /** Cards' folders are mounted at any path; what is in them tells which card it is. */
    @Test
    void theHistoryFollowsTheCardToAnotherPath() throws CardException, IOException {
        reset();
        Path elsewhere = Files.move(folder, computer.resolve("elsewhere"));

        assertThat(new HistoryJob(workplace).run(CardRequest.of(elsewhere)).changes())
                .hasSize(1);
    }

    @Test
    void repairIsRefusedWithWords() {
        assertRefused(
                () -> TriedChange.of(workplace, request, ChangeRequest.Repair.PLAIN),
                CardException.Kind.REFUSED,
                "a mounted folder cannot be repaired",
                "<LIST_CARDS>");
    }

    @Test
    void aFolderWithoutBootFilesIsNoCard() throws IOException {
        Path other = Files.createDirectories(computer.resolve("photos"));
        Files.writeString(other.resolve("photo.jpg"), "x");

        assertRefused(
                () -> new ShowJob(workplace).run(CardRequest.of(other)),
                CardException.Kind.UNREADABLE,
                "holds neither config.txt nor boot firmware",
                "where the card's boot partition is mounted");
    }

    @Test
    void noLinkLeadsOutOfTheFolder() throws CardException, IOException {
        Path outside = Files.createDirectories(computer.resolve("outside"));
        Files.writeString(outside.resolve("extra.txt"), "gpu_freq=700\n");
        Files.writeString(outside.resolve("victim"), "mine");
        Files.delete(folder.resolve("lab/extra.txt"));
        Files.delete(folder.resolve("lab"));
        Files.createSymbolicLink(folder.resolve("lab"), outside);
        Files.createSymbolicLink(folder.resolve("CONFIG.bm~"), outside.resolve("victim"));

        assertThat(new ShowJob(workplace).run(request).tuning())
                .extracting(TuningView::key)
                .containsExactly("arm_freq", "over_voltage");
        reset();

        assertThat(outside.resolve("extra.txt")).hasContent("gpu_freq=700\n");
        assertThat(outside.resolve("victim")).hasContent("mine");
        assertThat(read("CONFIG.TXT")).startsWith("# cart\n#arm_freq");
        assertThat(folder.resolve("CONFIG.TXT")).isRegularFile();
    }

    @Test
    void aConfigFileThatIsALinkIsNotRead() throws IOException {
        Path outside = Files.writeString(computer.resolve("outside.txt"), CONFIG);
        Files.delete(folder.resolve("CONFIG.TXT"));
        Files.createSymbolicLink(folder.resolve("config.txt"), outside);

        assertRefused(
                () -> TriedChange.of(workplace, request, ChangeRequest.ToStock.PLAIN),
                CardException.Kind.UNREADABLE,
                "has no config.txt",
                ".");
    }

    /** The first file is new, the second is old, each whole: as a cut between the two leaves them. */
    @Test
    void aCutBetweenTwoFilesIsFoundAndUndone() throws CardException, IOException {
        reset();
        write("lab/extra.txt", EXTRA);
        reopen();

        assertRefused(this::reset, CardException.Kind.INTERRUPTED, "waits for recovery", "<RecoverCard[");
        try (OpenRecovery open = new RecoverJob(workplace).begin(request)) {
            assertThat(open.view()).isPresent();
            open.undo();
        }
        assertThat(read("CONFIG.TXT")).isEqualTo(CONFIG);
        reset();
        assertThat(read("lab/extra.txt")).isEqualTo("#gpu_freq=600\n");
    }

    /** Puts the one finished record back among those of changes that are not known to be finished. */
    private void reopen() throws IOException {
        Path records = computer.resolve("records");
        try (Stream<Path> all = Files.walk(records.resolve("done"))) {
            Path record = all.filter(Files::isRegularFile).findFirst().orElseThrow();
            String card = record.getParent().getFileName().toString();
            Files.move(record, records.resolve("open").resolve(card + "_" + record.getFileName()));
        }
    }

    @Test
    void aUsersOwnFileOfTheTemporaryNameIsLeftAlone() throws CardException, IOException {
        write("CONFIG.bm~", "my own");
        write("lab/extra.bm~", "this too");

        reset();

        assertThat(read("CONFIG.TXT")).contains("#arm_freq");
        assertThat(read("CONFIG.bm~")).isEqualTo("my own");
        assertThat(read("lab/extra.bm~")).isEqualTo("this too");
        assertThat(names())
                .containsExactly("CONFIG.TXT", "CONFIG.bm~", "lab", "lab/extra.bm~", "lab/extra.txt", "start.elf");
    }

    @Test
    void aFileThatChangedSinceItWasShownIsLeftAlone() throws CardException, IOException {
        {
            TriedChange change = TriedChange.of(workplace, request, ChangeRequest.ToStock.PLAIN);
            write("CONFIG.TXT", "arm_freq=1900\n");
            assertRefused(change::apply, CardException.Kind.REFUSED, "not as it was", "Look at it again");
        }
        assertThat(read("CONFIG.TXT")).isEqualTo("arm_freq=1900\n");
    }

    private void reset() throws CardException, IOException {
        {
            TriedChange change = TriedChange.of(workplace, request, ChangeRequest.ToStock.PLAIN);
            change.apply();
        }
    }

    private void write(String name, String text) throws IOException {
        Files.write(folder.resolve(name), text.getBytes(StandardCharsets.ISO_8859_1));
    }

    private String read(String name) throws IOException {
        return Files.readString(folder.resolve(name), StandardCharsets.ISO_8859_1);
    }

    private List<String> names() throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(path -> !path.equals(folder))
                    .map(path -> folder.relativize(path).toString())
                    .sorted()
                    .toList();
        }
    }

    private static void assertRefused(ThrowingCallable work, CardException.Kind kind, String what, String remedy) {
        assertThatThrownBy(work).isInstanceOfSatisfying(CardException.class, e -> {
            assertThat(e.kind()).isEqualTo(kind);
            assertThat(e.getMessage()).contains(what);
            assertThat(new StepNames().remedy(e)).contains(remedy);
        });
    }
}
