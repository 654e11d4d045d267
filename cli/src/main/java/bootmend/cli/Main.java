package bootmend.cli;

import bootmend.cli.outcome.ExitCode;
import bootmend.cli.run.AnswerStream;
import bootmend.workplace.Workplace;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.util.Optional;

/** Starts the bootmend command line. */
public final class Main {

    private Main() {}

    @SuppressWarnings("DefaultCharset") // What the terminal shows is in its own charset.
    public static void main(String[] args) {
        Workplace workplace = Workplace.ofThisComputer(System.getenv());
        AnswerStream answer = new AnswerStream(new FileOutputStream(FileDescriptor.out));
        PrintWriter out = new PrintWriter(new OutputStreamWriter(answer, charset()), true);
        PrintWriter err = new PrintWriter(System.err, true);
        int code = CommandLines.createFor(args, workplace, System.console(), out, err)
                .execute(args);
        out.flush();
        Optional<IOException> failure = answer.failure();
        if (failure.isPresent()) {
            err.println("bootmend: the answer could not be written ("
                    + failure.get().getMessage()
                    + "). Make room where the answer goes, then ask again; a change that was made to a card stands.");
            code = Math.max(code, ExitCode.UNREADABLE);
        }
        err.flush();
        // Ending by itself is faster than an exit, which first looks for a log to write itself to.
        if (code != ExitCode.DONE) {
            System.exit(code);
        }
    }

    /** The terminal's, where this Java tells it; source: the javadoc of System.out, Java 19. */
    private static Charset charset() {
        try {
            return Charset.forName(System.getProperty("stdout.encoding", ""));
        } catch (IllegalArgumentException e) {
            return Charset.defaultCharset();
        }
    }
}
