package bootmend.fat;

import java.io.IOException;
import java.util.List;

/** A file's bytes at any place, read only as far as they are asked for. */
public interface FileBytes {

    /** Bytes, as the folder entry has it. */
    long size();

    /**
     * The bytes from {@code offset} on, at most {@code length} of them: fewer at the file's end, and where the file
     * stands on the card no further.
     *
     * @param offset 0 or more; past the end there is nothing
     */
    byte[] read(long offset, int length) throws IOException;

    /** Clauses on what of the file cannot be read; empty for a healthy file. */
    List<String> warnings();
}
