package bootmend.change;

import java.util.List;
import java.util.Optional;

/** Which interrupted change, if any, waits on the card in hand; a closed set. */
public sealed interface Interruption {

    /** Nothing is known of an interrupted change to such a card. */
    record None() implements Interruption {}

    /** This change was made to this very card. */
    record Exact(OpenChange change) implements Interruption {}

    /**
     * Something of each of these stands on the card, or would if it was made to it, and neither what stands there nor the
     * medium tells whose it is. A user may say which by {@link Recovery#named}.
     *
     * @param others finished changes that would explain what stands on the card as well
     */
    record Ambiguous(List<OpenChange> candidates, List<UndoRecord> others) implements Interruption {
        public Ambiguous {
            candidates = List.copyOf(candidates);
            others = List.copyOf(others);
        }
    }

    /**
     * Changes to cards of the same make-up were interrupted, but nothing shows that one was made to this card. Each waits
     * for its own card, or for {@link UndoStore#forget}.
     *
     * @param records oldest first, with the path and time they came from
     */
    record Elsewhere(List<UndoRecord> records) implements Interruption {
        public Elsewhere {
            records = List.copyOf(records);
        }
    }

    /** The change that surely is this card's. */
    default Optional<OpenChange> exact() {
        return this instanceof Exact found ? Optional.of(found.change()) : Optional.empty();
    }

    /** Whether a part of an interrupted change stands, or may stand, on the card, so that it must not be changed now. */
    default boolean forbidsChanges() {
        return this instanceof Ambiguous || exact().filter(OpenChange::isBegun).isPresent();
    }
}
