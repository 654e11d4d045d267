package bootmend.device.system;

import bootmend.device.CardName;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * How an ejection ended.
 *
 * @param ejected whether the system let go of the card
 * @param words a whole sentence for the user
 */
public record Ejection(boolean ejected, String words) {

    /** Has this computer let go of the card at {@code path}, which must not be open. */
    public static Ejection of(Path path) {
        if (Files.isDirectory(path)) {
            return notDone("A mounted folder is not ejected here; eject the card in the system.");
        }
        return Files.isRegularFile(path)
                ? notDone("An image file needs no ejecting.")
                : SystemDisks.ofThisComputer().eject(CardName.unseen(path).text());
    }

    static Ejection done(String words) {
        return new Ejection(true, words);
    }

    static Ejection notDone(String words) {
        return new Ejection(false, words);
    }
}
