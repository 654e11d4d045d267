package bootmend.gui.view;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Asks the user for files; tests answer in the user's place. */
interface Dialogs {

    /** Card images to open; empty where the user thought better of it. */
    List<Path> images();

    /** The folder of a mounted boot partition, or none. */
    List<Path> folder();

    /**
     * Where to save a file.
     *
     * @param name suggested
     */
    Optional<Path> save(String name);

    /** A file to read, such as a log or a profile. */
    Optional<Path> file();
}
