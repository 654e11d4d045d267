package bootmend.earlier;

import java.time.LocalDateTime;
import java.util.Optional;

/**
 * A text of the config file at one place.
 *
 * @param text its bytes; not to be changed
 * @param whole whether it surely begins and ends where the file did
 * @param written when, by the clock of whoever wrote it
 * @param cluster where it begins; 0 where no cluster of the card tells when it was written
 * @param leftOver whether it stands behind a younger text in that cluster
 */
record Sighting(
        Place place, byte[] text, boolean whole, Optional<LocalDateTime> written, long cluster, boolean leftOver) {}
