package bootmend.check;

import bootmend.config.ReachedLine;
import bootmend.tuning.resolve.Candidate;
import java.util.OptionalInt;

/**
 * Where on a card a finding is.
 *
 * @param path a file on the boot partition, or words such as {@code boot partition}
 * @param line line number, counted from 1, where it is one line of a text file
 */
public record Place(String path, OptionalInt line) {

    /** The volume as a whole. */
    static final Place VOLUME = file("boot partition");

    static Place file(String path) {
        return new Place(path, OptionalInt.empty());
    }

    static Place line(String path, int number) {
        return new Place(path, OptionalInt.of(number));
    }

    static Place of(ReachedLine line) {
        return line(line.file(), line.line().number());
    }

    static Place of(Candidate candidate) {
        return line(candidate.file(), candidate.line());
    }

    /** Path and line in words; not yet safe to show. */
    public String words() {
        return line.isPresent() ? path + " line " + line.getAsInt() : path;
    }
}
