package bootmend.tuning.resolve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.config.Condition;
import bootmend.config.Filter;
import bootmend.tuning.Revision;
import bootmend.tuning.TuningTables;
import org.junit.jupiter.api.Test;

class BoardFactsTest {

    private final TuningTables tables = TuningTables.load();

    @Test
    void aRevisionCodeTellsTheBoard() {
        BoardFacts facts = BoardFacts.none().withRevision(code("c03111"));

        assertThat(facts.board().orElseThrow().id()).isEqualTo("pi4");
        assertThat(facts.revisionNumber()).hasValue(1);
    }

    @Test
    void aRevisionCodeOfAnotherBoardIsRefused() {
        BoardFacts pi5 = BoardFacts.of(tables.boards().find("pi5").orElseThrow());

        assertThatThrownBy(() -> pi5.withRevision(code("c03111")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("Revision code c03111 is a pi4, not a pi5; give only one of the two, or correct it.");
    }

    @Test
    void aRevisionCodeOfAnUnknownBoardLeavesTheGivenOne() {
        BoardFacts pi5 = BoardFacts.of(tables.boards().find("pi5").orElseThrow());

        assertThat(pi5.withRevision(code("c04ff1")).board()).isEqualTo(pi5.board());
    }

    @Test
    void anOldStyleCodeTellsNoTypeNumber() {
        BoardFacts facts = BoardFacts.none().withRevision(code("000e"));

        assertThat(facts.test(new Filter.Model("pi1"))).isEqualTo(Condition.HOLDS);
        assertThat(facts.test(new Filter.BoardType(0x01))).isEqualTo(Condition.dependsOn("the board's type number"));
        assertThat(facts.test(new Filter.BoardType(0x11))).isEqualTo(Condition.FAILS);
    }

    @Test
    void factsAddUp() {
        BoardFacts facts = BoardFacts.none()
                .withPin(4, true)
                .withPin(5, false)
                .withBootVariable("partition", 2)
                .withBootVariable("boot_count", 1);

        assertThat(facts.test(new Filter.Pin(4, true))).isEqualTo(Condition.HOLDS);
        assertThat(facts.test(new Filter.Pin(5, true))).isEqualTo(Condition.FAILS);
        assertThat(facts.bootVariables()).hasSize(2);
    }

    private Revision code(String text) {
        return tables.revisions().decode(text);
    }
}
