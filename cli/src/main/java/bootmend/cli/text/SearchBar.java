package bootmend.cli.text;

import java.io.PrintWriter;
import me.tongfei.progressbar.DelegatingProgressBarConsumer;
import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** How far a search through a card's free space is, on standard error, where that is a terminal; nothing elsewhere. */
public final class SearchBar implements AutoCloseable {

    /** Fits an 80-column terminal. */
    private static final int WIDTH = 78;

    private static final int MEBIBYTE = 1 << 20;

    private final PrintWriter err;
    private ProgressBar bar;

    private SearchBar(PrintWriter err) {
        this.err = err;
    }

    public static SearchBar none() {
        return new SearchBar(null);
    }

    public static SearchBar onTerminal(PrintWriter err) {
        return new SearchBar(err);
    }

    /** Both in bytes. */
    public void at(long done, long all) {
        if (err == null) {
            return;
        }
        if (bar == null) {
            bar = new ProgressBarBuilder()
                    .setTaskName("searching (Ctrl-C ends it)")
                    .setInitialMax(all)
                    .setUnit(" MiB", MEBIBYTE)
                    .setStyle(ProgressBarStyle.ASCII)
                    .setConsumer(new DelegatingProgressBarConsumer(text -> show("\r" + text), WIDTH))
                    .build();
        }
        bar.maxHint(all);
        bar.stepTo(done);
    }

    private void show(String text) {
        err.print(text);
        err.flush();
    }

    @Override
    public void close() {
        if (bar != null) {
            bar.close();
            show("\r" + " ".repeat(WIDTH) + "\r");
        }
    }
}
