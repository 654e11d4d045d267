package bootmend.cli.report;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/** The forms of a batch's report, told by the end of the file's name. */
public enum ReportFormat {
    JSON(".json") {
        @Override
        BatchReport begin(Writer out, String command) throws IOException {
            return new ReportJson(out, command);
        }
    },
    CSV(".csv") {
        @Override
        BatchReport begin(Writer out, String command) throws IOException {
            return new ReportCsv(out);
        }
    },
    HTML(".html") {
        @Override
        BatchReport begin(Writer out, String command) throws IOException {
            return new ReportHtml(out, command);
        }
    };

    private final String suffix;

    ReportFormat(String suffix) {
        this.suffix = suffix;
    }

    public static Optional<ReportFormat> of(Path file) {
        String name = file.toString().toLowerCase(Locale.ROOT);
        for (ReportFormat format : values()) {
            if (name.endsWith(format.suffix)) {
                return Optional.of(format);
            }
        }
        return Optional.empty();
    }

    /** Writes what comes before the first card. */
    abstract BatchReport begin(Writer out, String command) throws IOException;
}
