package bootmend.cli.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.cli.outcome.BatchTotals;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A report that fails lets the cards go on, and is told of once, at the end. */
class WrittenReportTest {

    @TempDir
    private Path folder;

    @Test
    void theFirstFailureIsKeptAndNothingIsWrittenAfterIt() {
        List<String> asked = new ArrayList<>();
        WrittenReport<String> report = WrittenReport.answer(new Report<>() {
            @Override
            public void add(String card) throws IOException {
                asked.add(card);
                if (card.equals("b")) {
                    throw new IOException("no space left");
                }
            }

            @Override
            public void end(BatchTotals totals) {
                asked.add("end");
            }
        });

        List.of("a", "b", "c").forEach(report::add);

        assertThat(report.end(new BatchTotals()).orElseThrow()).hasMessage("the answer is not whole (no space left)");
        assertThat(asked).containsExactly("a", "b");
    }

    @Test
    void aFileThatIsThereIsLeftAlone() throws Exception {
        Path file = Files.writeString(folder.resolve("report.csv"), "mine");

        assertThatThrownBy(() -> ReportFormat.CSV.open(file, "check"))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("is there already and was left alone");
        assertThat(file).hasContent("mine");
    }

    @Test
    void aFileIsWholeOnceItIsEnded() throws Exception {
        Path file = folder.resolve("report.csv");

        assertThat(ReportFormat.of(file).orElseThrow().open(file, "check").end(new BatchTotals()))
                .isEmpty();

        assertThat(Files.readString(file)).startsWith("card,state,label").endsWith("exit_code\r\n");
    }
}
