package bootmend.device;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;

/** What the system tells of one file and of no other at the same time, as a short text. */
public final class FileKey {

    /** How the key of a file begins. */
    public static final String PREFIX = "file:";

    private FileKey() {}

    /**
     * Of an image file, or of a folder that is no mount point; a link stands for what it leads to. Where the system has no
     * number for a file, the time at which it was made stands in for it.
     *
     * @return empty where the system tells nothing
     */
    public static String of(Path file) {
        try {
            BasicFileAttributes attributes = Files.readAttributes(file, BasicFileAttributes.class);
            Object key = attributes.fileKey();
            return PREFIX + (key != null ? key : "made " + attributes.creationTime());
        } catch (IOException e) {
            return "";
        }
    }
}
