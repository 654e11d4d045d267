package bootmend.gui.model;

import bootmend.gui.text.Words;
import java.util.Optional;

/** Says why a control that works on the card cannot be used now. */
final class WhyNot {

    private WhyNot() {}

    /** Why no change can be worked out for a card, as a sentence; empty where one can. */
    static String change(Optional<CardModel> card, Words words) {
        if (card.isEmpty()) {
            return words.of("whynot.nocard");
        }
        Reading<?> sheet = card.get().sheet().get();
        ChangeState state = card.get().change().state().get();
        if (state.isWaiting()) {
            return words.of("whynot.interrupted");
        } else if (state instanceof ChangeState.Making) {
            return words.of("whynot.making");
        } else if (sheet instanceof Reading.Failed || card.get().gone().get()) {
            return words.of("whynot.unread");
        }
        return sheet.value().isPresent() ? "" : words.of("whynot.reading");
    }
}
