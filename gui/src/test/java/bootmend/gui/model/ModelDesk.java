package bootmend.gui.model;

import bootmend.gui.text.Words;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;

/** Models without a toolkit: all work is done at once, on the thread that asks. */
final class ModelDesk {

    static final Words WORDS = new Words(Locale.ENGLISH);

    private final Services services;

    /** @param home the data folder */
    ModelDesk(Path home) {
        this.services = new Services(
                Workplace.ofThisComputer(home), new WorkQueue(Runnable::run, Runnable::run), Runnable::run, WORDS);
    }

    /** A card that was read. */
    CardModel open(Path card) {
        CardModel model = new CardModel(services, CardRequest.of(card), Optional.empty());
        model.read();
        return model;
    }
}
