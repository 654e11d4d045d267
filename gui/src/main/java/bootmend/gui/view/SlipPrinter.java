package bootmend.gui.view;

import bootmend.page.SlipContent;
import javafx.print.PageLayout;
import javafx.print.PrinterJob;
import javafx.scene.layout.Region;
import javafx.stage.Window;

/** Prints a packing slip where the user says so in the system's own dialog. */
final class SlipPrinter {

    private final Window window;
    private final String jobName;

    /** What became of it. */
    enum Outcome {
        /** It is with the printer. */
        SENT,
        /** The user thought better of it. */
        STOPPED,
        /** This computer has none that was found. */
        NO_PRINTER,
        /** The printer did not take it. */
        FAILED
    }

    /** @param jobName what the list of the printer's jobs calls it */
    SlipPrinter(Window window, String jobName) {
        this.window = window;
        this.jobName = jobName;
    }

    Outcome print(SlipContent content) {
        PrinterJob job = PrinterJob.createPrinterJob();
        if (job == null) {
            return Outcome.NO_PRINTER;
        }
        job.getJobSettings().setJobName(jobName);
        if (!job.showPrintDialog(window)) {
            job.cancelJob();
            return Outcome.STOPPED;
        }
        PageLayout layout = job.getJobSettings().getPageLayout();
        for (Region sheet : new SlipPages(layout.getPrintableWidth(), layout.getPrintableHeight()).of(content)) {
            if (!job.printPage(layout, sheet)) {
                job.cancelJob();
                return Outcome.FAILED;
            }
        }
        return job.endJob() ? Outcome.SENT : Outcome.FAILED;
    }
}
