package bootmend.change;

import java.util.Objects;

/**
 * One file's whole content before and after a change; the arrays are not to be changed.
 *
 * @param before null where the file was not there
 * @param after null where it is no longer there
 */
public record FileChange(String path, byte[] before, byte[] after) {

    public FileChange {
        Objects.requireNonNull(path);
    }

    /** The same change backwards. */
    public FileChange reversed() {
        return new FileChange(path, after, before);
    }
}
