package bootmend.operation;

import bootmend.CardException;
import bootmend.card.OpenCard;
import java.io.IOException;

/** Works out what one kind of request comes to on an open card; reads it and writes nothing. */
@FunctionalInterface
interface WorkOut {

    /** @throws CardException where it cannot be done, or not without a risk that the user has not taken */
    Worked on(OpenCard card) throws CardException, IOException;
}
