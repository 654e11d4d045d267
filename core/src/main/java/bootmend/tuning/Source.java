package bootmend.tuning;

import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A published source, named so that a reader can find it.
 *
 * @param id short name within bootmend's data files, such as {@code S1}
 * @param title never empty
 * @param place file or book, possibly empty
 * @param edition commit or edition, possibly empty
 * @param note how sure the values are, possibly empty
 */
public record Source(String id, String title, String place, String edition, String note) {

    /** Title, place, edition and note in one phrase. */
    public String citation() {
        return Stream.of('"' + title + '"', place, edition, note)
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(", "));
    }
}
