package bootmend.device;

import bootmend.CardException;
import java.io.IOException;
import java.nio.file.Path;

/** Opens cards by name; tests put cards in memory behind it. */
@FunctionalInterface
public interface CardOpener {

    /** @param forChanging whether the card is to be written, which locks it until it is closed */
    CardSource open(Path path, boolean forChanging) throws CardException, IOException;
}
