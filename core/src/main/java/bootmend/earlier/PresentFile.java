package bootmend.earlier;

import java.time.LocalDateTime;
import java.util.Optional;

/**
 * The config file as it is now.
 *
 * @param cluster its first; 0 where that is not known
 * @param written when, by the clock of whoever wrote it
 */
public record PresentFile(byte[] bytes, long cluster, Optional<LocalDateTime> written) {}
