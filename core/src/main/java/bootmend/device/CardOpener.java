package bootmend.device;

import bootmend.CardException;
import java.io.IOException;
import java.nio.file.Path;

/** Opens cards by name; tests put cards in memory behind it. */
@FunctionalInterface
public interface CardOpener {

    /** @param forChanging whether the card is to be written, which locks it until it is closed */
    CardSource open(CardName name, boolean forChanging) throws CardException, IOException;

    /** The same for a path of which nobody has looked yet what it leads to. */
    default CardSource open(Path path, boolean forChanging) throws CardException, IOException {
        return open(CardName.unseen(path), forChanging);
    }
}
