package bootmend.cli.report;

import bootmend.CardException;
import bootmend.cli.outcome.BatchTotals;
import bootmend.cli.outcome.NewFile;
import java.io.Closeable;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.Optional;

/** A report with where it goes; its first failure is kept for the end, because the cards come first. */
public final class WrittenReport<T> {

    private final String name;
    private final Report<T> report;
    private final Closeable below;
    private IOException failure;

    private WrittenReport(String name, Report<T> report, Closeable below) {
        this.name = name;
        this.report = report;
        this.below = below;
    }

    /** How a report is begun. */
    @FunctionalInterface
    public interface Beginning<T> {
        Report<T> on(Writer out) throws IOException;
    }

    /** A report in a file that must not be there yet. */
    public static <T> WrittenReport<T> file(Path file, Beginning<T> beginning) throws CardException {
        try {
            Writer out = NewFile.open(file);
            return new WrittenReport<>("the report " + file, beginning.on(out), out);
        } catch (IOException e) {
            throw NewFile.failed(file, e);
        }
    }

    /** A report on standard output, which stays open. */
    public static <T> WrittenReport<T> answer(Report<T> report) {
        return new WrittenReport<>("the answer", report, () -> {});
    }

    public void add(T card) {
        if (failure == null) {
            try {
                report.add(card);
            } catch (IOException e) {
                failure = e;
            }
        }
    }

    /** Ends the report; gives what kept it from being whole. */
    public Optional<CardException> end(BatchTotals totals) {
        try (below) {
            if (failure == null) {
                report.end(totals);
            }
        } catch (IOException e) {
            failure = failure == null ? e : failure;
        }
        return Optional.ofNullable(failure)
                .map(e -> CardException.refused(
                        name + " is not whole (" + e.getMessage() + ")",
                        "The cards themselves are done as listed. Make room and give the command again.",
                        e));
    }
}
