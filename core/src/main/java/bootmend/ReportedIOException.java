package bootmend;

import java.io.IOException;
import java.util.Objects;

/**
 * A failure inside a device, whose interface knows I/O errors alone, that already has its words for a user: whoever would
 * explain an I/O error hands on {@link #report} instead.
 */
public final class ReportedIOException extends IOException {

    private static final long serialVersionUID = 1L;

    private final CardException report;

    public ReportedIOException(CardException report) {
        super(report.getMessage(), report);
        this.report = Objects.requireNonNull(report);
    }

    /** What stopped the work and what to do next. */
    public CardException report() {
        return report;
    }
}
