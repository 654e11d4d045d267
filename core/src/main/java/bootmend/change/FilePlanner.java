package bootmend.change;

import bootmend.CardException;
import bootmend.fat.DirectoryEntry;
import java.io.IOException;

/** Works out how files of a boot partition get new content. */
public interface FilePlanner {

    /** Adds the replacement of one file's content; the same content adds nothing. */
    void replace(String path, DirectoryEntry file, byte[] before, byte[] after) throws CardException, IOException;

    /**
     * Adds what makes a file of the root folder, or one that is there already, from what it was into what it is to be.
     *
     * @throws bootmend.CardException when the file is not as {@code change} says it was
     */
    void put(FileChange change) throws CardException, IOException;

    /** The plan of all that was added. */
    Plan plan(String title);
}
