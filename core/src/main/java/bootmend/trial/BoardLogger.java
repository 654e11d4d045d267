package bootmend.trial;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The script that logs a board's clock, temperature, volts and throttle mask as {@link LogSummary} reads them. */
public final class BoardLogger {

    /** The name that its own words call it by. */
    public static final String NAME = "board-log.sh";

    private BoardLogger() {}

    /** Plain POSIX sh, line ends LF. */
    public static String text() {
        try (InputStream in = BoardLogger.class.getResourceAsStream(NAME)) {
            if (in == null) {
                throw new IllegalStateException("this bootmend is damaged: " + NAME + " is missing; build it again");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
