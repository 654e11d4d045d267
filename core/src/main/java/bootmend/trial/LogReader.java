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
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.ToDoubleFunction;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Reads a board's log: cells parted by commas, semicolons or tabs, with a head row and the columns time (seconds from
 * whatever moment, or a date with {@code T} or a blank), clock, volts, temperature, throttle mask in hexadecimal, and busy
 * share of the processors, with units and names as boards print them, or without. Only time is
 * needed; a cell may be empty; lines that start with {@code #} are left out. Columns may stand in any order among others.
 */
final class LogReader {

    /** Rows that are read: more than a week at one a second. */
    static final int MAX_ROWS = 1_000_000;
    /** Bad rows that are told one by one. */
    private static final int MAX_TOLD = 50;

    private static final String BACK = "its time does not come after that of the row before";
    /** What lies between two starts of a board at the least, in seconds. No source. */
    private static final double RESTART_SECONDS = 60;

    /** Signs that part cells, the one that a head row has wins. */
    private static final List<Character> SIGNS = List.of('\t', ';', ',');

    private final String file;
    private final LineSource lines;
    private final Map<LogColumn, Integer> columns = new EnumMap<>(LogColumn.class);
    private final List<Sample> samples = new ArrayList<>();
    private final List<String> problems = new ArrayList<>();
    private final List<Integer> restarts = new ArrayList<>();
    private CSVFormat format = format(',');
    private LogClues clues = LogClues.NONE;
    private double shift;
    /** A row whose time went back: the first after another start of the board, if the next one goes on from it. */
    private Optional<Held> held = Optional.empty();

    private long line;
    private long badRows;

    /** A row that is not judged yet, as it stands in the log, and its line. */
    private record Held(Sample sample, long line) {}

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
        boolean cutShort = false;
        Optional<LineSource.Line> next = nextLine();
        while (next.isPresent() && !cutShort) {
            take(next.get());
            cutShort = samples.size() + badRows >= MAX_ROWS;
            next = nextLine();
        }
        held.ifPresent(row -> bad(row.line(), BACK));
        if (samples.isEmpty()) {
            throw CardException.unreadable(
                    file + " has no row that can be used" + (problems.isEmpty() ? "" : " (" + problems.get(0) + ")"),
                    "Give the CSV file that the board's logger wrote.");
        }
        return new BoardLog(samples, badRows, problems, cutShort && next.isPresent(), restarts, clues);
    }

    /** The next line that is neither empty nor a comment. */
    private Optional<LineSource.Line> nextLine() throws IOException {
        Optional<LineSource.Line> next;
        do {
            next = lines.next();
            line++;
            next.filter(text -> text.text().startsWith("#")).ifPresent(text -> clues = clues.with(text.text()));
        } while (next.isPresent()
                && (next.get().text().isBlank() || next.get().text().startsWith("#")));
        return next;
    }

    private void readHead() throws CardException, IOException {
        Optional<LineSource.Line> head = nextLine();
        head.ifPresent(row -> format = format(SIGNS.stream()
                .filter(sign -> row.text().indexOf(sign) >= 0)
                .findFirst()
                .orElse(',')));
        List<String> heads = head.flatMap(row -> cells(row.text())).orElse(List.of());
        for (int i = 0; i < heads.size(); i++) {
            int index = i;
            LogColumn.of(heads.get(i)).ifPresent(column -> columns.putIfAbsent(column, index));
        }
        if (!columns.containsKey(LogColumn.TIME)
                || !columns.containsKey(LogColumn.CLOCK) && !columns.containsKey(LogColumn.TEMPERATURE)) {
            throw CardException.unreadable(
                    file + ", line " + line + ": the head row should name the columns time, "
                            + "clock_mhz, volts, temperature, mask, parted by commas, semicolons or tabs",
                    "Put such a row on top; time and one of clock_mhz and temperature are needed.");
        }
    }

    private void take(LineSource.Line row) {
        try {
            if (row.cut()) {
                throw new IllegalArgumentException("it is longer than " + LineSource.MAX_LENGTH + " characters");
            }
            if (row.torn()) {
                throw new IllegalArgumentException("it has no line end, so that its last figure may be torn");
            }
            if (row.text().chars().anyMatch(LogReader::isForeign)) {
                throw new IllegalArgumentException("it has bytes that are no text");
            }
            List<String> cells =
                    cells(row.text()).orElseThrow(() -> new IllegalArgumentException("its quotes do not match"));
            if (!isHead(cells)) {
                place(sample(cells));
            }
        } catch (IllegalArgumentException e) {
            bad(line, e.getMessage());
        }
    }

    private static boolean isForeign(int character) {
        return Character.isISOControl(character) && character != '\t' || character == '\uFFFD';
    }

    /** A logger that was started again writes its head row again. */
    private boolean isHead(List<String> cells) {
        Integer time = columns.get(LogColumn.TIME);
        return time < cells.size() && LogColumn.of(cells.get(time)).equals(Optional.of(LogColumn.TIME));
    }

    private void bad(long number, String why) {
        badRows++;
        if (problems.size() < MAX_TOLD) {
            problems.add("line " + number + ": " + why);
        }
    }

    /** Puts a row after those before it. Time that goes back and then on from there is another start of the board. */
    private void place(Sample read) {
        if (held.isPresent()) {
            Held first = held.get();
            held = Optional.empty();
            if (read.seconds() > first.sample().seconds() && read.seconds() + shift <= last()) {
                shift = last() - first.sample().seconds() + RESTART_SECONDS;
                restarts.add(samples.size());
                samples.add(first.sample().later(shift));
            } else {
                bad(first.line(), BACK);
            }
        }
        if (samples.isEmpty() || read.seconds() + shift > last()) {
            samples.add(read.later(shift));
        } else if (read.seconds() + shift == last()) {
            throw new IllegalArgumentException(BACK);
        } else {
            held = Optional.of(new Held(read, line));
        }
    }

    private double last() {
        return samples.get(samples.size() - 1).seconds();
    }

    private static CSVFormat format(char sign) {
        return CSVFormat.RFC4180
                .builder()
                .setDelimiter(sign)
                .setIgnoreSurroundingSpaces(sign != '\t')
                .setTrim(true)
                .get();
    }

    /** Each line is parsed by itself, so that a stray quote spoils one row and not the rest of the log. */
    private Optional<List<String>> cells(String text) {
        try (CSVParser parser = CSVParser.parse(text, format)) {
            List<CSVRecord> records = parser.getRecords();
            return records.size() == 1 ? Optional.of(records.get(0).toList()) : Optional.empty();
        } catch (IOException | RuntimeException e) {
            return Optional.empty();
        }
    }

    private Sample sample(List<String> cells) {
        double seconds = Quantity.SECONDS.check(LogCell.seconds(
                cell(cells, LogColumn.TIME).orElseThrow(() -> new IllegalArgumentException("it has no time"))));
        OptionalLong mask = cell(cells, LogColumn.MASK)
                .map(text -> ThrottleMask.parse(text)
                        .orElseThrow(() -> new IllegalArgumentException("its mask is no hexadecimal number")))
                .map(OptionalLong::of)
                .orElse(OptionalLong.empty());
        Sample sample = new Sample(
                seconds,
                number(cells, LogColumn.CLOCK, LogCell::clock, Quantity.CLOCK),
                number(cells, LogColumn.VOLTS, LogCell::volts, Quantity.VOLTS),
                number(cells, LogColumn.TEMPERATURE, LogCell::celsius, Quantity.PEAK),
                mask,
                number(cells, LogColumn.BUSY, LogCell::number, Quantity.BUSY));
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

    private OptionalDouble number(
            List<String> cells, LogColumn column, ToDoubleFunction<String> reader, Quantity quantity) {
        Optional<String> cell = cell(cells, column);
        return cell.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(quantity.check(reader.applyAsDouble(cell.get())));
    }
}
