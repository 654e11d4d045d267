package bootmend.view;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.boot.BoardDiagnosis;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.Verdict;
import bootmend.finding.Finding;
import bootmend.finding.Purpose;
import bootmend.finding.Severity;
import bootmend.fixtures.SparseDisk;
import bootmend.fixtures.VendorCards;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.workplace.MemoryCard;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Untouched cards of every generation, and of the layouts that builds use: each is whole, and nothing stands against any
 * purpose. The boards are those of "Conditional filters", config_txt/conditional.adoc, commit 0456a78c.
 */
class VendorPurposesTest {

    static Stream<String> ids() {
        return VendorCards.all().keySet().stream();
    }

    private static MemoryCard card(String id) throws Exception {
        SparseDisk disk = VendorCards.all().get(id).build().get().build();
        return new MemoryCard(disk, 0, null);
    }

    @ParameterizedTest
    @MethodSource("ids")
    void itStartsOnEachOfItsBoards(String id) throws Exception {
        BootDiagnosis found = new DiagnoseJob(card(id).workplace())
                .run(CardRequest.of(Path.of("/cards/lab.img")), BoardRequest.none());

        assertThat(Set.copyOf(found.boardIds()))
                .isEqualTo(Set.copyOf(
                        Arrays.asList(VendorCards.all().get(id).boards().split(" "))));
        for (BoardDiagnosis board : found.boards()) {
            assertThat(board.chain().verdict()).as(board.board()).isInstanceOf(Verdict.Boots.class);
            board.tryOnce().ifPresent(once -> assertThat(once.verdict()).isInstanceOf(Verdict.Boots.class));
        }
    }

    @ParameterizedTest
    @MethodSource("ids")
    void nothingStandsAgainstAnyPurpose(String id) throws Exception {
        MemoryCard card = card(id);
        for (Purpose purpose : Purpose.values()) {
            CheckView view = new CheckJob(card.workplace())
                    .run(new CheckRequest(CardRequest.of(Path.of("/cards/lab.img")), purpose, BoardRequest.none()));

            assertThat(view.findings().stream()
                            .filter(finding -> finding.severity() != Severity.NOTE)
                            .map(Finding::words))
                    .as(purpose.word())
                    .isEmpty();
        }
    }
}
