package bootmend.tuning;

import java.util.List;
import java.util.Map;
import java.util.OptionalLong;

/**
 * One row of a {@link DataFile}; every reader of a cell throws {@link DataFileException} where the cell is wrong.
 *
 * @param file the file's name
 * @param line the row's line in the file, counted from 1
 */
public record DataRow(String file, long line, List<String> header, List<String> cells) {

    private static final int HEX = 16;

    /** The cell's text, possibly empty. */
    public String text(String column) {
        int index = header.indexOf(column);
        if (index < 0) {
            throw error("there is no column " + column);
        }
        return cells.get(index);
    }

    /** The cell's text, never empty. */
    public String required(String column) {
        String text = text(column);
        if (text.isEmpty()) {
            throw error("column " + column + " is empty");
        }
        return text;
    }

    /** The cell's words, split at single blanks; none where it is empty. */
    public List<String> words(String column) {
        String text = text(column);
        return text.isEmpty() ? List.of() : List.of(text.split(" "));
    }

    /** The cell as a decimal number, or none where it is empty. */
    OptionalLong optionalNumber(String column) {
        return text(column).isEmpty() ? OptionalLong.empty() : OptionalLong.of(number(column));
    }

    /** The cell as a decimal number. */
    long number(String column) {
        return number(column, required(column));
    }

    /** The cell as a number from {@code min} to {@code max}. */
    int number(String column, int min, int max) {
        long number = number(column);
        if (number < min || number > max) {
            throw error("column " + column + " should be " + min + " to " + max + ", found " + number);
        }
        return (int) number;
    }

    /** Text from the given column as a decimal number or a hexadecimal one with {@code 0x}. */
    public long number(String column, String text) {
        try {
            return text.startsWith("0x") ? Long.parseLong(text.substring(2), HEX) : Long.parseLong(text);
        } catch (NumberFormatException e) {
            throw error("column " + column + " should be a number, found " + text);
        }
    }

    /** What the cell's word stands for. */
    public <T> T choice(String column, Map<String, T> choices) {
        T choice = choices.get(text(column));
        if (choice == null) {
            throw error("column " + column + " should be one of " + choices.keySet() + ", found " + text(column));
        }
        return choice;
    }

    public DataFileException error(String problem) {
        return new DataFileException(file, line, problem);
    }
}
