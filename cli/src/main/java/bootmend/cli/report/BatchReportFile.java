package bootmend.cli.report;

import bootmend.CardException;
import bootmend.cli.outcome.BatchTotals;
import bootmend.cli.outcome.NewFile;
import bootmend.page.CardOutcome;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;

/** The file of {@code --report}, or none; its first failure is kept for the end, because the cards come first. */
public final class BatchReportFile {

    private final Path file;
    private final BatchReport report;
    private IOException failure;

    private BatchReportFile(Path file, BatchReport report) {
        this.file = file;
        this.report = report;
    }

    public static BatchReportFile open(Optional<Path> file, String command) throws CardException {
        if (file.isEmpty()) {
            return new BatchReportFile(null, null);
        }
        try {
            return new BatchReportFile(
                    file.get(), ReportFormat.of(file.get()).orElseThrow().begin(NewFile.open(file.get()), command));
        } catch (IOException e) {
            throw NewFile.failed(file.get(), e);
        }
    }

    public void add(CardOutcome card) {
        if (report != null && failure == null) {
            try {
                report.add(card);
            } catch (IOException e) {
                failure = e;
            }
        }
    }

    /** Ends the report; gives what kept it from being whole. */
    public Optional<CardException> end(BatchTotals totals) {
        if (report == null) {
            return Optional.empty();
        }
        try (BatchReport closed = report) {
            if (failure == null) {
                closed.end(totals);
            }
        } catch (IOException e) {
            failure = failure == null ? e : failure;
        }
        return Optional.ofNullable(failure)
                .map(e -> CardException.refused(
                        "the report " + file + " is not whole (" + e.getMessage() + ")",
                        "The cards themselves are done as listed. Make room and give the command again.",
                        e));
    }
}
