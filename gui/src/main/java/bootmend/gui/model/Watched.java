package bootmend.gui.model;

import java.util.List;
import java.util.Objects;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;

/**
 * A value that tells its watchers when it becomes another.
 *
 * @param <T> should be immutable
 */
public final class Watched<T> {

    private final List<Consumer<? super T>> watchers = new CopyOnWriteArrayList<>();
    private T value;

    public Watched(T value) {
        this.value = Objects.requireNonNull(value);
    }

    public T get() {
        return value;
    }

    /** Sets it and tells every watcher, unless it is equal to what it was. */
    public void set(T next) {
        if (!value.equals(Objects.requireNonNull(next))) {
            value = next;
            // A watcher that sets it again tells the others first; they then hear of the latest value twice, not of an
            // old one.
            watchers.forEach(watcher -> watcher.accept(value));
        }
    }

    /** Tells {@code watcher} the value now and whenever it becomes another. */
    public Watch watch(Consumer<? super T> watcher) {
        watchers.add(watcher);
        watcher.accept(value);
        return () -> watchers.remove(watcher);
    }

    /** Something that watches, until it is told to end. */
    @FunctionalInterface
    public interface Watch {
        void end();
    }
}
