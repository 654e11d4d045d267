package bootmend.tuning;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.function.Function;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * One of bootmend's tables: RFC 4180 CSV in UTF-8 with a header row; lines that start with {@code #} are comments.
 *
 * @param name the file's name, for messages
 * @param header the column names, all different
 * @param rows the rows, each with as many cells as the header
 */
public record DataFile(String name, List<String> header, List<DataRow> rows) {

    private static final CSVFormat FORMAT = CSVFormat.RFC4180
            .builder()
            .setCommentMarker('#')
            .setIgnoreEmptyLines(true)
            .setTrim(true)
            .get();

    /** Reads a file that stands beside this class among the resources. */
    static DataFile resource(String name) {
        return resource(DataFile.class, name);
    }

    /** Reads a file that stands beside {@code neighbour} among the resources. */
    public static DataFile resource(Class<?> neighbour, String name) {
        try (InputStream in = neighbour.getResourceAsStream(name)) {
            if (in == null) {
                throw new DataFileException(name, 0, "the file is missing");
            }
            return read(name, new InputStreamReader(in, StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new DataFileException(name, e);
        }
    }

    public static DataFile read(String name, Reader text) {
        try (CSVParser parser =
                CSVParser.builder().setReader(text).setFormat(FORMAT).get()) {
            List<String> header = null;
            List<DataRow> rows = new ArrayList<>();
            for (CSVRecord cells : parser) {
                long line = parser.getCurrentLineNumber();
                if (header == null) {
                    header = checkedHeader(name, line, cells.toList());
                } else if (cells.size() != header.size()) {
                    throw new DataFileException(
                            name, line, "expected " + header.size() + " cells, found " + cells.size());
                } else {
                    rows.add(new DataRow(name, line, header, cells.toList()));
                }
            }
            if (header == null) {
                throw new DataFileException(name, 1, "there is no header row");
            }
            return new DataFile(name, header, List.copyOf(rows));
        } catch (IOException | UncheckedIOException e) {
            throw new DataFileException(name, e);
        }
    }

    private static List<String> checkedHeader(String name, long line, List<String> header) {
        if (new HashSet<>(header).size() != header.size()) {
            throw new DataFileException(name, line, "two columns have the same name");
        }
        return List.copyOf(header);
    }

    /** This file, if its columns are exactly these. */
    public DataFile withColumns(String... expected) {
        if (!header.equals(List.of(expected))) {
            throw new DataFileException(name, 1, "expected the columns " + List.of(expected) + ", found " + header);
        }
        return this;
    }

    /** Turns each row into a value; two rows with the same key are an error. */
    public <T> List<T> map(Function<DataRow, T> reader, Function<T, ?> key) {
        List<T> values = new ArrayList<>();
        HashSet<Object> seen = new HashSet<>();
        for (DataRow row : rows) {
            T value = reader.apply(row);
            if (!seen.add(key.apply(value))) {
                throw row.error("there is an earlier row for " + key.apply(value));
            }
            values.add(value);
        }
        return List.copyOf(values);
    }
}
