package bootmend.view;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.boot.BoardDiagnosis;
import bootmend.boot.BootChain;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.LinkKind;
import bootmend.boot.LinkState;
import bootmend.boot.Verdict;
import bootmend.fixtures.ChainCard;
import bootmend.fixtures.DamagedCards;
import bootmend.fixtures.DemoCards;
import bootmend.fixtures.SparseDisk;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DiagnoseJobTest {

    @TempDir
    Path dir;

    private BootDiagnosis diagnose(Path card) throws CardException {
        return new DiagnoseJob(Workplace.ofThisComputer(dir.resolve("home")))
                .run(CardRequest.of(card), BoardRequest.none());
    }

    private BootDiagnosis diagnose(SparseDisk disk) throws CardException, IOException {
        Path file = dir.resolve("card.img");
        Files.deleteIfExists(file);
        disk.writeTo(file);
        return diagnose(file);
    }

    @Test
    void demoCardsAreMeantForEveryBoardAndAreWhole() throws CardException, IOException {
        BootDiagnosis stock = diagnose(DemoCards.build(DemoCards.all().get(1)));
        assertThat(stock.boards()).hasSize(18);
        assertThat(stock.boards())
                .allSatisfy(board -> assertThat(board.chain().verdict().word())
                        .as("%s", board.chain())
                        .isEqualTo("boots"));
        BootDiagnosis gpt = diagnose(DemoCards.build(DemoCards.all().get(4)));
        assertThat(gpt.boards())
                .allSatisfy(board -> assertThat(board.chain().verdict().word())
                        .as("%s", board.chain())
                        .isEqualTo("boots"));
    }

    @Test
    void aMountedFolderIsDiagnosedAsFarAsItShows() throws CardException, IOException {
        Path folder = Files.createDirectory(dir.resolve("boot"));
        for (var file : ChainCard.everyBoard().entrySet()) {
            Path path = folder.resolve(file.getKey());
            Files.createDirectories(path.getParent());
            Files.write(path, file.getValue());
        }
        BoardDiagnosis pi4 = board(diagnose(folder), "pi4");
        assertThat(pi4.chain().verdict().word()).isEqualTo("unknown");
        assertThat(pi4.chain().link(LinkKind.ROOT).why()).contains("mounted folder does not show");
        assertThat(pi4.chain().link(LinkKind.KERNEL).state()).isEqualTo(LinkState.WHOLE);
        Path kernel = folder.resolve("kernel8.img");
        Files.write(kernel, Arrays.copyOf(Files.readAllBytes(kernel), 3000));
        assertThat(board(diagnose(folder), "pi4").chain().verdict().word()).isEqualTo("stops");
    }

    private static BoardDiagnosis board(BootDiagnosis found, String id) {
        return found.boards().stream()
                .filter(each -> each.board().equals(id))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aDamagedCardIsDiagnosedOrRefusedInWords() throws IOException, CardException {
        for (String id : DamagedCards.ids()) {
            try {
                assertThat(diagnose(DamagedCards.card(id).disk()).boards())
                        .as(id)
                        .isNotEmpty();
            } catch (CardException e) {
                assertThat(e.remedy()).as(id).isNotBlank();
            }
        }
    }

    @Test
    void aCardWithoutABootPartitionStopsAtItsFirstLink() throws IOException, CardException {
        BootDiagnosis found = diagnose(new SparseDisk(1 << 20, 512));

        assertThat(found.meantForNone()).isTrue();
        assertThat(found.boards()).allSatisfy(board -> {
            assertThat(board.chain().verdict()).isInstanceOf(Verdict.Stops.class);
            assertThat(board.chain().link(LinkKind.PARTITION).state()).isEqualTo(LinkState.MISSING);
            assertThat(board.chain().links()).hasSize(LinkKind.values().length);
        });
    }

    @Test
    void aCardWhoseFatIsGoneIsDamagedThere() throws IOException, CardException {
        SparseDisk disk = ChainCard.full().build();
        disk.patch(ChainCard.bootStart(), new byte[64 * 512]);

        BootChain chain = diagnose(disk).boards().get(0).chain();

        assertThat(chain.link(LinkKind.PARTITION).state()).isEqualTo(LinkState.DAMAGED);
        assertThat(chain.verdict().word()).isEqualTo("stops");
    }

    @Test
    void aCardThatOnlyASearchReadsStopsAtItsPartition() throws IOException, CardException {
        SparseDisk disk = ChainCard.full().build();
        disk.patch(0, new byte[512]);

        BootChain chain = diagnose(disk).boards().get(0).chain();

        assertThat(chain.link(LinkKind.PARTITION).state()).isEqualTo(LinkState.MISSING);
        assertThat(chain.link(LinkKind.KERNEL).state()).isEqualTo(LinkState.WHOLE);
        assertThat(chain.verdict().word()).isEqualTo("stops");
    }
}
