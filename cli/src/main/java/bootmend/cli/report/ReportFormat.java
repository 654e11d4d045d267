package bootmend.cli.report;

import bootmend.CardException;
import bootmend.page.CardOutcome;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The forms of a batch's report, told by the end of the file's name. */
public enum ReportFormat {
    JSON,
    CSV,
    HTML;

    public static Optional<ReportFormat> of(Path file) {
        String name = file.toString().toLowerCase(Locale.ROOT);
        return Arrays.stream(values())
                .filter(format -> name.endsWith("." + format.name().toLowerCase(Locale.ROOT)))
                .findFirst();
    }

    /** Begins a report in a file that must not be there yet. */
    public WrittenReport<CardOutcome> open(Path file, String command) throws CardException {
        return WrittenReport.file(file, out -> begin(out, command));
    }

    private Report<CardOutcome> begin(Writer out, String command) throws IOException {
        return switch (this) {
            case JSON -> new JsonReport<>(out, Map.of("command", command), CardReport::of);
            case CSV -> new CsvReport<>(out, BatchRows.HEADER, BatchRows::of);
            case HTML -> PageReport.batch(out, command);
        };
    }
}
