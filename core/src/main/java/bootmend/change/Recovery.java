package bootmend.change;

import bootmend.CardException;
import java.io.IOException;
import java.util.Optional;

/** Finds changes to a card that were cut short, and finishes them or takes them back. */
public sealed interface Recovery permits SectorRecovery, FolderRecovery {

    /** The change that waits on this card, the newest where there are several. */
    Optional<OpenChange> find() throws CardException, IOException;

    /** Writes what is left of the change, reads it back, and notes it as done. */
    Committed finish(OpenChange change) throws CardException;

    /** Writes the old content back, reads it back, and notes the change as taken back. */
    Committed takeBack(OpenChange change) throws CardException;
}
