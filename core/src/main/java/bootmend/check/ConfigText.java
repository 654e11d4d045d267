package bootmend.check;

import bootmend.config.ConfigDocument;
import java.util.List;

/**
 * The config file, or one that it includes.
 *
 * @param path from the boot partition's root
 * @param document its lines
 * @param warnings sentences on what could not be read of it
 */
public record ConfigText(String path, ConfigDocument document, List<String> warnings) {

    public ConfigText {
        warnings = List.copyOf(warnings);
    }
}
