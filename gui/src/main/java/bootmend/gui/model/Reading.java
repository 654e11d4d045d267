package bootmend.gui.model;

import bootmend.CardException;
import java.util.Optional;

/**
 * Something that is read from a card off the screen's thread.
 *
 * @param <T> what it comes to
 */
public sealed interface Reading<T> {

    /** Nobody asked for it yet. */
    record Unasked<T>() implements Reading<T> {}

    /** It is being read. */
    record Waiting<T>() implements Reading<T> {}

    /** It was read. */
    record Ready<T>(T what) implements Reading<T> {}

    /** It could not be read. */
    record Failed<T>(CardException why) implements Reading<T> {}

    /** What was read, if it was. */
    default Optional<T> value() {
        return this instanceof Ready<T> ready ? Optional.of(ready.what()) : Optional.empty();
    }

    /** What kept it from being read, if anything did. */
    default Optional<CardException> error() {
        return this instanceof Failed<T> failed ? Optional.of(failed.why()) : Optional.empty();
    }
}
