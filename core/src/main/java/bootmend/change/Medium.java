package bootmend.change;

import bootmend.device.FileKey;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;

/**
 * What a card was written on, as far as the system told it.
 *
 * @param place where it was then
 * @param key as the device layer gives it, such as {@code file:} and a file's number, {@code cid:} and a card's own register; empty where the system told nothing
 */
public record Medium(String place, String key) {

    /** How the key of a card by its own register begins. */
    private static final String CARD = "cid:";

    private static final int TAG_LENGTH = 12;

    /** What two mediums are to each other. */
    enum Likeness {
        /** One and the same. */
        SAME,
        /** The same file, at another place. */
        MOVED,
        /** Surely two. */
        OTHER,
        /** Not told. */
        UNKNOWN
    }

    public Medium {
        place = place == null ? "" : place;
        key = key == null ? "" : key;
    }

    /** Where only its place is known. */
    public static Medium at(String place) {
        return new Medium(place, "");
    }

    Likeness to(Medium other) {
        if (key.isEmpty() || other.key.isEmpty()) {
            return Likeness.UNKNOWN;
        }
        if (key.equals(other.key)) {
            return isFile() && !place.equals(other.place) ? Likeness.MOVED : Likeness.SAME;
        }
        boolean tellsApart = isFile() || other.isFile() || isCard() && other.isCard();
        return tellsApart ? Likeness.OTHER : Likeness.UNKNOWN;
    }

    private boolean isFile() {
        return key.startsWith(FileKey.PREFIX);
    }

    private boolean isCard() {
        return key.startsWith(CARD);
    }

    /** Whether the very file still is where it was. */
    boolean isFileInPlace() {
        try {
            return isFile() && FileKey.of(Path.of(place)).equals(key);
        } catch (InvalidPathException e) {
            return false;
        }
    }

    /** A short text by which a record's name tells its medium from others; empty where nothing is known. */
    String tag() {
        return key.isEmpty()
                ? ""
                : RecordFormat.sha256(key.getBytes(StandardCharsets.UTF_8)).substring(0, TAG_LENGTH);
    }
}
