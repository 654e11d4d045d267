package bootmend.tuning;

import java.util.function.Supplier;

/** A value that is made at its first use and kept; safe to share between threads. */
final class Lazy<T> {

    private final Supplier<T> maker;
    private T value;

    Lazy(Supplier<T> maker) {
        this.maker = maker;
    }

    synchronized T get() {
        if (value == null) {
            value = maker.get();
        }
        return value;
    }
}
