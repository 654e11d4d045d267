package bootmend.cli.run;

import bootmend.batch.CutBatch;
import bootmend.batch.CutBatches;
import bootmend.cli.text.Screen;
import bootmend.page.CutBatchWords;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import picocli.CommandLine.Help.Ansi;

/** Tells on standard error of batches that were cut, each once. */
public final class CutBatchNote {

    private final CutBatches batches;
    private final Screen screen;

    /** @param home bootmend's data folder */
    public CutBatchNote(Path home, PrintWriter err, Ansi ansi) {
        this.batches = new CutBatches(home);
        this.screen = new Screen(err, ansi);
    }

    public void tell() {
        for (CutBatch batch : batches.untold()) {
            CutBatchWords.of(batch, batches.kept(batch)).forEach(screen::line);
            screen.line(advice(batch));
            screen.blank();
            if (screen.isWhole()) {
                put(batch);
            }
        }
    }

    private static String advice(CutBatch batch) {
        String cut = batch.cut().isEmpty() ? "" : "`bootmend recover CARD` brings a cut change to an end. ";
        String left = batch.notBegun().isEmpty() ? "" : "Give the command again for the cards that were not begun. ";
        return cut + left + "This is told once.";
    }

    private void put(CutBatch batch) {
        try {
            batches.told(batch);
        } catch (IOException e) {
            screen.line("It will be told again, because " + batch.journal() + " could not be put away ("
                    + e.getMessage() + ").");
        }
    }
}
