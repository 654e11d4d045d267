package bootmend.gui.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Follows the card that is looked at: tells whenever it is another one, or something of it becomes another. */
final class Following {

    private final List<Function<CardModel, Watched<?>>> parts;
    private final Runnable told;
    private final List<Watched.Watch> watches = new ArrayList<>();

    /** @param parts what of a card is watched */
    Following(DeskModel desk, List<Function<CardModel, Watched<?>>> parts, Runnable told) {
        this.parts = List.copyOf(parts);
        this.told = told;
        desk.current().watch(this::follow);
    }

    private void follow(Optional<CardModel> card) {
        watches.forEach(Watched.Watch::end);
        watches.clear();
        card.ifPresent(model ->
                parts.forEach(part -> watches.add(part.apply(model).watch(value -> told.run()))));
        told.run();
    }
}
