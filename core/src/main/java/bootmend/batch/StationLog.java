package bootmend.batch;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.config.VisibleText;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** A station's log: one line a card, tab-separated: time (UTC), number, device, outcome, words. */
public final class StationLog {

    private final Path file;

    private StationLog(Path file) {
        this.file = file;
    }

    /**
     * Opens the log, which is added to.
     *
     * @throws CardException of kind REFUSED when it cannot be written
     */
    public static StationLog at(Path file) throws CardException {
        StationLog log = new StationLog(file.toAbsolutePath());
        try {
            Files.createDirectories(log.file.getParent());
            log.append("");
            return log;
        } catch (IOException e) {
            throw CardException.refused(
                    "the log " + file + " cannot be written (" + e.getMessage() + ")",
                    "",
                    e,
                    NextStep.Plain.TAKE_OTHER_LOG);
        }
    }

    public Path file() {
        return file;
    }

    public void add(Instant when, StationTurn turn) throws IOException {
        append(String.join(
                        "\t",
                        when.truncatedTo(ChronoUnit.SECONDS).toString(),
                        Integer.toString(turn.number()),
                        VisibleText.of(turn.path()),
                        turn.outcome().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                        VisibleText.of(turn.words()))
                + "\n");
    }

    private void append(String line) throws IOException {
        Files.writeString(
                file,
                line,
                StandardCharsets.UTF_8,
                StandardOpenOption.CREATE,
                StandardOpenOption.APPEND,
                StandardOpenOption.DSYNC);
    }
}
