package bootmend.finding;

import java.util.OptionalInt;

/**
 * Where on a card a finding is.
 *
 * @param path a file on the boot partition, or words such as {@code boot partition}
 * @param line line number, counted from 1, where it is one line of a text file
 */
public record Place(String path, OptionalInt line) {

    /** The volume as a whole. */
    public static final Place VOLUME = file("boot partition");

    public static Place file(String path) {
        return new Place(path, OptionalInt.empty());
    }

    public static Place line(String path, int number) {
        return new Place(path, OptionalInt.of(number));
    }

    /** Path and line in words; not yet safe to show. */
    public String words() {
        return line.isPresent() ? path + " line " + line.getAsInt() : path;
    }
}
