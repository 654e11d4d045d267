package bootmend.cli.text;

import java.util.function.Consumer;
import me.tongfei.progressbar.DelegatingProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** How far a batch is, on standard error, where that is a terminal; nothing elsewhere. */
public final class BatchBar implements AutoCloseable {

    /** Fits an 80-column terminal. */
    private static final int WIDTH = 78;

    private final ProgressBar bar;
    private final Consumer<String> screen;

    private BatchBar(ProgressBar bar, Consumer<String> screen) {
        this.bar = bar;
        this.screen = screen;
    }

    public static BatchBar none() {
        return new BatchBar(null, text -> {});
    }

    /** @param screen takes the bar's text, each time the whole line, with what brings it to the line's start */
    public static BatchBar onTerminal(String command, int cards, Consumer<String> screen) {
        return new BatchBar(
                new ProgressBarBuilder()
                        .setTaskName(command)
                        .setInitialMax(cards)
                        .setUnit(" cards", 1)
                        .setStyle(ProgressBarStyle.ASCII)
                        .setConsumer(new DelegatingProgressBarConsumer(text -> screen.accept("\r" + text), WIDTH))
                        .build(),
                screen);
    }

    public void step() {
        if (bar != null) {
            bar.step();
        }
    }

    @Override
    public void close() {
        if (bar != null) {
            bar.close();
            screen.accept("\r" + " ".repeat(WIDTH) + "\r");
        }
    }
}
