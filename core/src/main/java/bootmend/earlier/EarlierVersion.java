package bootmend.earlier;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * A text that the config file had, or that was to become its text.
 *
 * @param text its bytes; not to be changed
 * @param whole whether it is the whole file; else only lines of it are left
 * @param places where it was found, the place that orders it first
 * @param written when, by the clock of whoever wrote it, where that is told
 * @param newer whether it was written after the file that is there now
 */
public record EarlierVersion(
        byte[] text, boolean whole, List<Place> places, Optional<LocalDateTime> written, Order order, boolean newer) {

    public EarlierVersion {
        places = List.copyOf(places);
    }
}
