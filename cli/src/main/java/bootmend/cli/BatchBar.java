package bootmend.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import me.tongfei.progressbar.ConsoleProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** How far a batch is, on standard error, where that is a terminal; nothing elsewhere. */
final class BatchBar implements AutoCloseable {

    /** Fits an 80-column terminal. */
    private static final int WIDTH = 78;

    private final ProgressBar bar;

    private BatchBar(ProgressBar bar) {
        this.bar = bar;
    }

    static BatchBar none() {
        return new BatchBar(null);
    }

    static BatchBar onTerminal(String command, int cards) {
        return new BatchBar(new ProgressBarBuilder()
                .setTaskName(command)
                .setInitialMax(cards)
                .setUnit(" cards", 1)
                .setStyle(ProgressBarStyle.ASCII)
                .clearDisplayOnFinish()
                .setConsumer(new ConsoleProgressBarConsumer(
                        new PrintStream(new FileOutputStream(FileDescriptor.err), true), WIDTH))
                .build());
    }

    void step() {
        if (bar != null) {
            bar.step();
        }
    }

    @Override
    public void close() {
        if (bar != null) {
            bar.close();
        }
    }
}
