package bootmend.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.finding.Purpose;
import bootmend.finding.Rule;
import bootmend.finding.Severity;
import bootmend.tuning.DataFile;
import bootmend.tuning.DataFileException;
import java.io.StringReader;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rules' data file, and damage in it. */
class RuleBookTest {

    private static final String HEADER = "id,ship,firmware_update,stability_run,meaning,remedy,source\n";

    @Test
    void everyRuleTellsInWholeSentencesWhatItMeansAndWhatToDo() {
        assertThat(RuleBook.load(TestCard.TABLES.sources()).all())
                .hasSizeGreaterThan(40)
                .allSatisfy(rule -> {
                    assertThat(rule.meaning()).matches("[A-Z].*\\.");
                    assertThat(rule.remedy()).matches("[A-Z].*\\.");
                    assertThat(rule.source()).doesNotContainPattern("\\bS\\d");
                });
    }

    @Test
    void anUpdateThatWaitsOnATunedCardBlocksEveryPurpose() {
        Rule rule = RuleBook.load(TestCard.TABLES.sources())
                .find("update-waiting-while-tuned")
                .orElseThrow();
        assertThat(rule.severities())
                .hasSize(Purpose.values().length)
                .containsValue(Severity.BLOCKER)
                .doesNotContainValue(Severity.WARNING)
                .doesNotContainValue(Severity.NOTE);
    }

    @Test
    void whatMendsIsToldOfRulesAlone() {
        RuleBook rules = RuleBook.load(TestCard.TABLES.sources());
        assertThat(RuleBook.fixes())
                .isNotEmpty()
                .allSatisfy((id, fix) -> assertThat(rules.find(id))
                        .as(id)
                        .get()
                        .extracting(Rule::fix)
                        .isEqualTo(fix));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "a-b,fatal,-,-,M.,R.,S1                | should be one of",
                "a-b,-,-,-,M.,R.,S1                    | matters for no purpose",
                "A b,note,-,-,M.,R.,S1                 | lower-case words",
                "a-b,note,-,-,M.,R.,S999               | unknown source S999",
                "a-b,note,-,-,M.,R.,S1; hearsay        | unknown source hearsay",
                "a-b,note,-,-,,R.,S1                   | column meaning is empty"
            })
    void damageIsNamed(String row, String problem) {
        assertThatThrownBy(() -> RuleBook.read(
                        DataFile.read("rules.csv", new StringReader(HEADER + row)),
                        Map.of(),
                        TestCard.TABLES.sources()))
                .isInstanceOf(DataFileException.class)
                .hasMessageContaining(problem)
                .hasMessageContaining("rules.csv, line 2");
    }
}
