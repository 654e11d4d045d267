package bootmend.fat;

import java.util.List;

/**
 * The bytes of a file as far as they could be read.
 *
 * @param warnings sentences on what was missing or unlikely; empty for a healthy file
 */
public record FileContent(byte[] bytes, List<String> warnings) {

    public FileContent {
        warnings = List.copyOf(warnings);
    }

    /** Whether every byte that the folder entry promises was read without a warning. */
    public boolean isWhole() {
        return warnings.isEmpty();
    }
}
