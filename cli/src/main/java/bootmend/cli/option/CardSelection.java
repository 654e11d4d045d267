package bootmend.cli.option;

import bootmend.CardException;
import bootmend.batch.CardNames;
import bootmend.request.CardRequest;
import java.nio.file.Path;
import java.util.List;

/** The cards that a command is about, and how its answer is given. */
public interface CardSelection {

    /** What was named, as cards; what that leaves out is noted on standard error. */
    List<Path> cards(CardNames how) throws CardException;

    CardRequest request(Path card) throws CardException;

    /** One of them, for a command on one card. */
    CardArgument only(Path card);

    boolean json();
}
