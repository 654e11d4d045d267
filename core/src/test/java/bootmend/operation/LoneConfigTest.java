package bootmend.operation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.finding.Purpose;
import bootmend.fixtures.SparseDisk;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.request.GivenText;
import bootmend.view.CheckJob;
import bootmend.view.CheckRequest;
import bootmend.view.DiagnoseJob;
import bootmend.view.ShowJob;
import bootmend.workplace.MemoryWorkplace;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A config file that is on no card, as a file and as bytes that are handed over. */
class LoneConfigTest {

    private static final String TUNED = "# mine\r\narm_freq=2000\r\nhdmi_group=1";

    private static final Workplace HERE = Workplace.ofThisComputer(Path.of("never-made"));

    @TempDir
    private Path folder;

    private Path file;
    private Workplace workplace;

    @BeforeEach
    void write() throws IOException {
        file = Files.writeString(folder.resolve("lab.txt"), TUNED);
        workplace = Workplace.ofThisComputer(folder.resolve("home"));
    }

    @Test
    void itIsShownAndCheckedWithoutItsBootFiles() throws Exception {
        assertThat(new ShowJob(workplace).run(CardRequest.of(file)).tuning()).hasSize(1);
        assertThat(new CheckJob(workplace)
                        .run(new CheckRequest(CardRequest.of(file), Purpose.SHIP, BoardRequest.of("pi4")))
                        .findings())
                .extracting(finding -> finding.where().path())
                .isNotEmpty()
                .containsOnly("config.txt", "in general");
        assertThatThrownBy(() -> new DiagnoseJob(workplace).run(CardRequest.of(file), BoardRequest.none()))
                .isInstanceOf(CardException.class);
    }

    @Test
    void theResultIsGivenAndTheFileStaysAsItIs() throws Exception {
        ChangeOperation.TextChange set =
                operation().workOutText(CardRequest.of(file), ChangeOrder.of(onPi4("arm_freq=1500")));
        assertThat(text(set)).isEqualTo("# mine\r\narm_freq=1500\r\nhdmi_group=1");
        ChangeOperation.TextChange same =
                operation().workOutText(CardRequest.of(file), ChangeOrder.of(onPi4("arm_freq=2000")));
        assertThat(text(same)).isEqualTo(TUNED);
        assertThat(Files.readString(file)).isEqualTo(TUNED);
    }

    @Test
    void bytesThatAreHandedOverAreNoFile() throws Exception {
        CardRequest given = CardRequest.of(Path.of("-")).given(new GivenText(TUNED.getBytes(StandardCharsets.UTF_8)));
        assertThat(text(operation().workOutText(given, ChangeOrder.of(ChangeRequest.ToStock.PLAIN))))
                .isEqualTo("# mine\r\n#arm_freq=2000\r\nhdmi_group=1");
        assertThatThrownBy(() -> make(given, ChangeRequest.ToStock.PLAIN)).isInstanceOf(CardException.class);
        CardRequest large = CardRequest.of(Path.of("-")).given(new GivenText(new byte[GivenText.MOST_BYTES + 1]));
        assertThatThrownBy(() -> new ShowJob(workplace).run(large)).isInstanceOf(CardException.class);
    }

    @Test
    void theFileIsReplacedWholeThroughALinkAndKeepsItsRights() throws Exception {
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r-----"));
        Path link = Files.createSymbolicLink(folder.resolve("link.txt"), file);

        ChangeOutcome outcome = make(CardRequest.of(link), ChangeRequest.ToStock.PLAIN);

        assertThat(outcome.ifMade()).get().isInstanceOf(Made.InFile.class);
        assertThat(Files.isSymbolicLink(link)).isTrue();
        assertThat(Files.readString(file)).contains("#arm_freq=2000");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-r-----");
        try (Stream<Path> all = Files.list(folder)) {
            assertThat(all.map(path -> path.getFileName().toString())).containsExactlyInAnyOrder("lab.txt", "link.txt");
        }
        assertThat(make(CardRequest.of(file), ChangeRequest.ToStock.PLAIN))
                .isInstanceOf(ChangeOutcome.NothingToDo.class);
    }

    @Test
    void aFileThatChangedMeanwhileAndALeftPieceAreLeftAlone() throws Exception {
        ProposedChange shown = operation().workOut(CardRequest.of(file), ChangeOrder.of(ChangeRequest.ToStock.PLAIN));
        Files.writeString(file, "arm_freq=2100\n");
        assertThatThrownBy(() -> operation().make(shown).orThrow()).isInstanceOf(CardException.class);
        assertThat(Files.readString(file)).isEqualTo("arm_freq=2100\n");

        Path left = Files.writeString(folder.resolve("lab.txt.bm~"), "someone's");
        assertThatThrownBy(() -> make(CardRequest.of(file), ChangeRequest.ToStock.PLAIN))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("already");
        assertThat(Files.readString(left)).isEqualTo("someone's");
        assertThat(Files.readString(file)).isEqualTo("arm_freq=2100\n");
    }

    @Test
    void whatNeedsACardIsRefused() {
        for (ChangeRequest request : List.of(
                ChangeRequest.Undo.LAST,
                ChangeRequest.Repair.PLAIN,
                new ChangeRequest.Stage("pi4", List.of("arm_freq=1850")),
                new ChangeRequest.Adopt())) {
            assertThatThrownBy(() -> make(CardRequest.of(file), request)).isInstanceOf(CardException.class);
        }
    }

    @Test
    void aSmallImageIsNoConfigFile() throws Exception {
        try (MemoryWorkplace bench = new MemoryWorkplace()) {
            SparseDisk card = MemoryWorkplace.card("arm_freq=2000\n");
            Path image = folder.resolve("small.txt");
            Files.write(image, card.toBytes(0, 1 << 20));
            assertThatThrownBy(() ->
                            operation().workOutText(CardRequest.of(image), ChangeOrder.of(ChangeRequest.ToStock.PLAIN)))
                    .isInstanceOf(CardException.class);
        }
    }

    @Property(tries = 60)
    void anyBytesAreShownCheckedAndChangedOrRefused(@ForAll @Size(max = 200) byte[] bytes) {
        CardRequest given = CardRequest.of(Path.of("-")).given(new GivenText(bytes));
        try {
            new ShowJob(HERE).run(given, BoardRequest.of("pi4"));
            byte[] after = new ChangeOperation(HERE)
                    .workOutText(given, ChangeOrder.of(ChangeRequest.Edit.of("hdmi_group=2")))
                    .text();
            CardRequest again = CardRequest.of(Path.of("-")).given(new GivenText(after));
            assertThat(new ChangeOperation(HERE)
                            .workOutText(again, ChangeOrder.of(ChangeRequest.Edit.of("hdmi_group=2")))
                            .change()
                            .isNothing())
                    .isTrue();
        } catch (CardException e) {
            assertThat(e.getMessage()).isNotEmpty();
        }
    }

    private static ChangeRequest onPi4(String setting) {
        return new ChangeRequest.Edit(List.of(setting), Optional.empty(), Optional.of("pi4"), List.of(), List.of());
    }

    private ChangeOperation operation() {
        return new ChangeOperation(workplace);
    }

    private ChangeOutcome make(CardRequest card, ChangeRequest request) throws CardException {
        return operation()
                .make(card, ChangeOrder.of(request), ChangeOperation.Approval.GIVEN)
                .orThrow();
    }

    private static String text(ChangeOperation.TextChange change) {
        return new String(change.text(), StandardCharsets.UTF_8);
    }
}
