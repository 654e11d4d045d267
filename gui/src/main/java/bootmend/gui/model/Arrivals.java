package bootmend.gui.model;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executor;
import java.util.function.Consumer;

/**
 * Hands what comes from other threads to the screen's, all that has come at once, so that a screen that is busy gets
 * fewer and larger pieces and never a queue of them.
 *
 * @param <T> what comes
 */
final class Arrivals<T> {

    private final Executor screen;
    private final Consumer<List<T>> take;
    private final List<T> waiting = new ArrayList<>();
    private boolean asked;

    /** @param take runs on the screen's thread, with what came in the order in which it did */
    Arrivals(Executor screen, Consumer<List<T>> take) {
        this.screen = screen;
        this.take = take;
    }

    /** May be called from any thread. */
    void add(T arrived) {
        synchronized (waiting) {
            waiting.add(arrived);
            if (asked) {
                return;
            }
            asked = true;
        }
        screen.execute(this::hand);
    }

    /** Hands over what has come, on the screen's thread. */
    void hand() {
        List<T> all;
        synchronized (waiting) {
            asked = false;
            all = List.copyOf(waiting);
            waiting.clear();
        }
        if (!all.isEmpty()) {
            take.accept(all);
        }
    }
}
