package bootmend.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatLayout;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.operation.ChangeOperation;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.oracle.Tool;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KeepJobTest {

    private static final byte[] ELF = new byte[5000];

    @TempDir
    private Path folder;

    private Workplace workplace;
    private Path card;
    private Path kept;
    private FatLayout layout;
    private SparseDisk disk;

    @BeforeEach
    void makeCard() throws IOException {
        workplace = Workplace.ofThisComputer(folder.resolve("home"));
        new Random(7).nextBytes(ELF);
        FatSpec spec = FatSpec.fat16(5000).label("LAB").serial(0x5C01AB07).build();
        disk = spec.emptyDisk();
        layout = new FatBuilder(spec)
                .file("start4.elf", ELF)
                .file("config.txt", "arm_freq=1750\n".getBytes(StandardCharsets.US_ASCII))
                .directory("overlays")
                .directory("overlays/empty")
                .file("overlays/A long name, with blanks.dtbo", new byte[700])
                .writeTo(disk, 0);
        card = folder.resolve("card.img");
        kept = folder.resolve("card.zip");
        disk.writeTo(card);
    }

    @Test
    void theSameCardGivesTheSameFileAndItIsReadLikeTheCard() throws Exception {
        KeepView view = keep(kept);
        keep(folder.resolve("again.zip"));

        assertThat(view.isWhole()).isTrue();
        assertThat(view.files()).isEqualTo(3);
        assertThat(Files.readAllBytes(folder.resolve("again.zip"))).isEqualTo(Files.readAllBytes(kept));
        CompareView compared = new CompareJob(workplace).run(source(card), source(kept), Optional.empty());
        assertThat(compared.isSame()).isTrue();
        assertThat(compared.sameConfig()).isTrue();
        CardView shown = new ShowJob(workplace).run(CardRequest.of(kept));
        assertThat(shown.partition().serial()).isEqualTo("5C01-AB07");
        assertThat(shown.tuning()).hasSize(1);
        assertThat(new DiagnoseJob(workplace)
                        .run(CardRequest.of(kept), BoardRequest.of("pi4"))
                        .boards())
                .hasSize(1);
        try (Stream<Path> all = Files.list(folder)) {
            assertThat(all.map(path -> path.getFileName().toString())).noneMatch(name -> name.endsWith(".new"));
        }
    }

    /** An unpacker that knows nothing of this program gives every file as mtools reads it from the card. */
    @Test
    void whatUnzipGivesIsWhatMtoolsReads() throws Exception {
        Tool.need("unzip", "mcopy");
        keep(kept);
        Path unpacked = folder.resolve("unpacked");
        Tool.run("unzip", "-q", kept.toString(), "-d", unpacked.toString());
        Path copied = Files.createDirectory(folder.resolve("copied"));
        Tool.run("mcopy", "-s", "-n", "-m", "-i", card.toString(), "::", copied.toString());
        assertThat(paths(unpacked.resolve("files")))
                .isEqualTo(paths(copied))
                .contains("overlays/A long name, with blanks.dtbo", "overlays/empty");
        for (String path : paths(copied)) {
            Path file = copied.resolve(path);
            if (Files.isRegularFile(file)) {
                assertThat(unpacked.resolve("files").resolve(path)).hasSameBinaryContentAs(file);
                assertThat(Files.getLastModifiedTime(unpacked.resolve("files").resolve(path)))
                        .isEqualTo(Files.getLastModifiedTime(file));
            }
        }
    }

    private static List<String> paths(Path root) throws IOException {
        try (Stream<Path> all = Files.walk(root)) {
            return all.filter(path -> !path.equals(root))
                    .map(path -> root.relativize(path).toString())
                    .sorted()
                    .toList();
        }
    }

    @Test
    void aFileThatIsNotWholeIsKeptAsFarAsItGoesAndSaid() throws Exception {
        layout.setFatEntries(disk, layout.chain("start4.elf")[1], 0);
        Files.delete(card);
        disk.writeTo(card);

        KeepView view = keep(kept);

        assertThat(view.isWhole()).isFalse();
        assertThat(view.notes()).singleElement().asString().contains("start4.elf is not whole");
        assertThat(new ShowJob(workplace).run(CardRequest.of(kept)).notes())
                .anyMatch(note -> note.contains("start4.elf is not whole"));
    }

    @Test
    void noFileIsReplacedUnasked() throws Exception {
        Files.writeString(kept, "mine");
        assertThatThrownBy(() -> keep(kept)).isInstanceOf(CardException.class).hasMessageContaining("already");
        assertThat(Files.readString(kept)).isEqualTo("mine");
        assertThat(new KeepJob(workplace).run(CardRequest.of(card), kept, true).isWhole())
                .isTrue();
    }

    @Test
    void keptFilesAreNeverChanged() throws Exception {
        keep(kept);
        byte[] before = Files.readAllBytes(kept);
        for (ChangeRequest request : new ChangeRequest[] {
            ChangeRequest.ToStock.PLAIN,
            ChangeRequest.Repair.PLAIN,
            ChangeRequest.Undo.LAST,
            ChangeRequest.Edit.of("a=1")
        }) {
            ChangeOrder order = ChangeOrder.of(request);
            assertThatThrownBy(() -> new ChangeOperation(workplace).workOut(CardRequest.of(kept), order))
                    .isInstanceOf(CardException.class);
        }
        assertThat(Files.readAllBytes(kept)).isEqualTo(before);
    }

    /** Whatever byte is changed: it is read as it was, or refused. */
    @Test
    void damageIsNeverTakenForFiles() throws Exception {
        keep(kept);
        byte[] sound = Files.readAllBytes(kept);
        Random random = new Random(11);
        Path hurt = folder.resolve("hurt.zip");
        int refused = 0;
        for (int i = 0; i < 60; i++) {
            byte[] bytes = sound.clone();
            bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
            Files.write(hurt, i % 10 == 0 ? Arrays.copyOf(bytes, random.nextInt(bytes.length)) : bytes);
            try {
                CompareView view = new CompareJob(workplace).run(source(card), source(hurt), Optional.empty());
                assertThat(view.files()).isEmpty();
            } catch (CardException e) {
                refused++;
            }
        }
        assertThat(refused).isGreaterThan(15);
    }

    private KeepView keep(Path file) throws CardException {
        return new KeepJob(workplace).run(CardRequest.of(card), file, false);
    }

    private static CompareSource source(Path path) {
        return new CompareSource.OfCard(CardRequest.of(path));
    }
}
