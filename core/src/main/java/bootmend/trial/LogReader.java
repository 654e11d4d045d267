package bootmend.trial;

import bootmend.CardException;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Reads a board's log: CSV with a head row and the columns time (seconds from whatever moment, or a time such as
 * {@code 2026-11-24T15:30:00Z}), clock in MHz, volts, temperature in degC, and throttle mask in hexadecimal. Only time is
 * needed; a cell may be empty; lines that start with {@code #} are left out. Columns may stand in any order among others.
 */
final class LogReader {

    /** Rows that are read: more than a week at one a second. */
    static final int MAX_ROWS = 1_000_000;
    /** Bad rows that are told one by one. */
    private static final int MAX_TOLD = 5;

    private static final CSVFormat FORMAT = CSVFormat.RFC4180
            .builder()
            .setIgnoreSurroundingSpaces(true)
            .setTrim(true)
            .get();

    private final String file;
    private final LineSource lines;
    private final Map<LogColumn, Integer> columns = new EnumMap<>(LogColumn.class);
    private final List<Sample> samples = new ArrayList<>();
    private final List<String> problems = new ArrayList<>();
    private long line;
    private long badRows;

    private LogReader(String file, Reader text) {
        this.file = file;
        this.lines = new LineSource(text);
    }

    /** @throws CardException if the file cannot be read, has no usable head row or no usable row */
    static BoardLog read(Path file) throws CardException {
        if (!Files.isRegularFile(file)) {
            throw CardException.unreadable(
                    "there is no log file " + file, "Give the CSV file that the board's logger wrote.");
        }
        try (InputStream in = Files.newInputStream(file)) {
            return read(file.toString(), new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8)));
        } catch (IOException e) {
            throw CardException.unreadable(
                    file + " cannot be read (" + e.getMessage() + ")", "Check its rights and the disk it is on.", e);
        }
    }

    static BoardLog read(String file, Reader text) throws CardException, IOException {
        return new LogReader(file, text).read();
    }

    private BoardLog read() throws CardException, IOException {
        readHead();
        boolean interrupted = false;
        Optional<LineSource.Line> next = nextLine();
        while (next.isPresent() && !interrupted) {
            take(next.get());
            interrupted = samples.size() + badRows >= MAX_ROWS;
            next = nextLine();
        }
        if (samples.isEmpty()) {
            throw CardException.unreadable(
                    file + " has no row that can be used" + (problems.isEmpty() ? "" : " (" + problems.get(0) + ")"),
                    "Give the CSV file that the board's logger wrote.");
        }
        return new BoardLog(samples, badRows, problems, interrupted && next.isPresent());
    }

    /** The next line that is neither empty nor a comment. */
    private Optional<LineSource.Line> nextLine() throws IOException {
        Optional<LineSource.Line> next;
        do {
            next = lines.next();
            line++;
        } while (next.isPresent()
                && (next.get().text().isBlank() || next.get().text().startsWith("#")));
        return next;
    }

    private void readHead() throws CardException, IOException {
        List<String> heads = nextLine().flatMap(head -> cells(head.text())).orElse(List.of());
        for (int i = 0; i < heads.size(); i++) {
            int index = i;
            LogColumn.of(heads.get(i)).ifPresent(column -> columns.putIfAbsent(column, index));
        }
        if (!columns.containsKey(LogColumn.TIME)
                || !columns.containsKey(LogColumn.CLOCK) && !columns.containsKey(LogColumn.TEMPERATURE)) {
            throw CardException.unreadable(
                    file + ", line " + line + ": the head row should name the columns time, "
                            + "clock_mhz, volts, temperature, mask, parted by commas",
                    "Put such a row on top; time and one of clock_mhz and temperature are needed.");
        }
    }

    private void take(LineSource.Line row) {
        try {
            if (row.cut()) {
                throw new IllegalArgumentException("it is longer than " + LineSource.MAX_LENGTH + " characters");
            }
            samples.add(sample(
                    cells(row.text()).orElseThrow(() -> new IllegalArgumentException("its quotes do not match"))));
        } catch (IllegalArgumentException e) {
            badRows++;
            if (problems.size() < MAX_TOLD) {
                problems.add("line " + line + ": " + e.getMessage());
            }
        }
    }

    /** Each line is parsed by itself, so that a stray quote spoils one row and not the rest of the log. */
    private static Optional<List<String>> cells(String text) {
        try (CSVParser parser = CSVParser.parse(text, FORMAT)) {
            List<CSVRecord> records = parser.getRecords();
            return records.size() == 1 ? Optional.of(records.get(0).toList()) : Optional.empty();
        } catch (IOException | RuntimeException e) {
            return Optional.empty();
        }
    }

    private Sample sample(List<String> cells) {
        double seconds = Quantity.SECONDS.check(
                seconds(cell(cells, LogColumn.TIME).orElseThrow(() -> new IllegalArgumentException("it has no time"))));
        if (!samples.isEmpty() && seconds <= samples.get(samples.size() - 1).seconds()) {
            throw new IllegalArgumentException("its time does not come after that of the row before");
        }
        OptionalLong mask = cell(cells, LogColumn.MASK)
                .map(text -> ThrottleMask.parse(text)
                        .orElseThrow(() -> new IllegalArgumentException("its mask is no hexadecimal number")))
                .map(OptionalLong::of)
                .orElse(OptionalLong.empty());
        Sample sample = new Sample(
                seconds,
                number(cells, LogColumn.CLOCK, Quantity.CLOCK),
                number(cells, LogColumn.VOLTS, Quantity.VOLTS),
                number(cells, LogColumn.TEMPERATURE, Quantity.PEAK),
                mask);
        if (sample.clock().isEmpty() && sample.celsius().isEmpty()) {
            throw new IllegalArgumentException("it has neither clock nor temperature");
        }
        return sample;
    }

    private Optional<String> cell(List<String> cells, LogColumn column) {
        Integer index = columns.get(column);
        return index == null || index >= cells.size() || cells.get(index).isEmpty()
                ? Optional.empty()
                : Optional.of(cells.get(index));
    }

    private OptionalDouble number(List<String> cells, LogColumn column, Quantity quantity) {
        Optional<String> cell = cell(cells, column);
        return cell.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(quantity.check(decimal(cell.get())));
    }

    private static double seconds(String text) {
        if (!text.contains("T")) {
            return decimal(text);
        }
        try {
            Instant time = Instant.parse(text);
            return time.getEpochSecond() + time.getNano() / 1e9;
        } catch (DateTimeParseException e) {
            throw new IllegalArgumentException("its time is neither seconds nor like 2026-11-24T15:30:00Z", e);
        }
    }

    private static double decimal(String text) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException("it has text where a number should be", e);
        }
    }
}
