package bootmend.gui.model;

import java.nio.file.Path;
import java.util.List;

/** Several cards that are worked on together. */
public final class BatchModel {

    private final Services services;
    private final List<Path> cards;

    /** @param cards each once */
    BatchModel(Services services, List<Path> cards) {
        this.services = services;
        this.cards = List.copyOf(cards);
    }

    public List<Path> cards() {
        return cards;
    }

    Services services() {
        return services;
    }
}
