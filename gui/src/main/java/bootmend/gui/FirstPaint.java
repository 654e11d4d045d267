package bootmend.gui;

import java.time.Duration;
import java.time.Instant;
import java.util.function.Consumer;
import javafx.application.Platform;
import javafx.scene.Scene;

/**
 * Measures how long it took from the start of the process until the window was painted for the first time.
 *
 * <p>A pulse lays out and then paints; when the second one comes, the first was painted.
 */
final class FirstPaint {

    private static final int PULSES = 2;

    private final Scene scene;
    private final Consumer<Duration> told;
    private final Runnable listener = this::pulse;
    private int pulses;

    private FirstPaint(Scene scene, Consumer<Duration> told) {
        this.scene = scene;
        this.told = told;
    }

    /** Tells once, on the screen's thread; the process's start is known to about 10 ms. */
    static void measure(Scene scene, Consumer<Duration> told) {
        scene.addPostLayoutPulseListener(new FirstPaint(scene, told).listener);
    }

    private void pulse() {
        pulses++;
        if (pulses < PULSES) {
            Platform.requestNextPulse();
            return;
        }
        scene.removePostLayoutPulseListener(listener);
        ProcessHandle.current()
                .info()
                .startInstant()
                .ifPresent(start -> told.accept(Duration.between(start, Instant.now())));
    }
}
