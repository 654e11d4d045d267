package bootmend.cli;

import bootmend.cli.outcome.ExitCode;
import bootmend.workplace.Workplace;
import java.io.PrintWriter;

/** Starts the bootmend command line. */
public final class Main {

    private Main() {}

    @SuppressWarnings("DefaultCharset") // What the terminal shows is in its own charset.
    public static void main(String[] args) {
        Workplace workplace = Workplace.ofThisComputer(System.getenv());
        PrintWriter out = new PrintWriter(System.out, true);
        PrintWriter err = new PrintWriter(System.err, true);
        int code = CommandLines.createFor(args, workplace, System.console(), out, err)
                .execute(args);
        out.flush();
        err.flush();
        // Ending by itself is faster than an exit, which first looks for a log to write itself to.
        if (code != ExitCode.DONE) {
            System.exit(code);
        }
    }
}
