package bootmend.change;

import bootmend.CardException;
import bootmend.folder.MountedFolder;
import java.io.IOException;
import java.util.Arrays;

/** Puts a plan's files into a mounted folder, each new file beside the old, forced, and renamed over it. */
final class FolderCommit {

    private FolderCommit() {}

    /** What the file holds now, of which one byte more than any version of it is enough. */
    static byte[] now(MountedFolder folder, FileChange file) throws IOException {
        return folder.content(file.path(), 1 + Math.max(length(file.before()), length(file.after())));
    }

    private static int length(byte[] bytes) {
        return bytes == null ? 0 : bytes.length;
    }

    /** A folder that changed since it was read stops here. */
    static void refuseUnlessAsPlanned(MountedFolder folder, Plan plan) throws CardException {
        for (FileChange file : plan.files()) {
            try {
                if (!Arrays.equals(now(folder, file), file.before())) {
                    throw CardException.refused(file.path() + " changed since it was read", "Try again.");
                }
            } catch (IOException e) {
                throw CardException.refused(
                        file.path() + " could not be read again (" + e.getMessage() + ")",
                        "Nothing was written. Check that the card still is mounted, then try again.",
                        e);
            }
        }
    }

    /** Writes what is not as planned yet, then reads every file back. */
    static void write(MountedFolder folder, Plan plan) throws IOException {
        for (FileChange file : plan.files()) {
            if (!Arrays.equals(now(folder, file), file.after())) {
                folder.put(file.path(), file.after());
            }
        }
        for (FileChange file : plan.files()) {
            folder.tidy(file.path());
            if (!Arrays.equals(now(folder, file), file.after())) {
                throw new IOException(file.path() + " does not read back as it was written");
            }
        }
    }
}
