package bootmend.config;

import java.util.Optional;

/** Where the files that a config file includes come from. */
@FunctionalInterface
public interface IncludeSource {

    /** The bytes of the file that an {@code include} line names, as it names it; empty where there is none. */
    Optional<byte[]> read(String name);

    /** A source that has no files. */
    static IncludeSource none() {
        return name -> Optional.empty();
    }
}
