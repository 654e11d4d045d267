package bootmend.cli.run;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;
import java.util.Optional;

/**
 * Standard output that keeps its first failure, which the printing classes of Java swallow.
 *
 * <p>A reader that wants no more, as at the other end of a pipe, is no failure; what is written after it goes nowhere.
 */
public final class AnswerStream extends OutputStream {

    private final OutputStream below;
    private IOException failure;
    private boolean readerGone;

    /** @param below not buffered, so that a failure shows once what is written is flushed to here */
    public AnswerStream(OutputStream below) {
        this.below = below;
    }

    /** What kept the answer from being written whole. */
    public synchronized Optional<IOException> failure() {
        return Optional.ofNullable(failure);
    }

    @Override
    public void write(int single) throws IOException {
        write(new byte[] {(byte) single}, 0, 1);
    }

    @Override
    public synchronized void write(byte[] bytes, int start, int length) throws IOException {
        if (readerGone) {
            return;
        }
        if (failure != null) {
            throw new IOException(failure.getMessage(), failure);
        }
        try {
            below.write(bytes, start, length);
        } catch (IOException e) {
            note(e);
        }
    }

    @Override
    public synchronized void flush() throws IOException {
        try {
            below.flush();
        } catch (IOException e) {
            note(e);
        }
    }

    private void note(IOException e) throws IOException {
        if (isReaderGone(e)) {
            readerGone = true;
            return;
        }
        failure = failure == null ? e : failure;
        throw e;
    }

    /** By the words that systems have for EPIPE and its like; Java does not give the number. */
    private static boolean isReaderGone(IOException e) {
        String words = String.valueOf(e.getMessage()).toLowerCase(Locale.ROOT);
        return words.contains("broken pipe")
                || words.contains("pipe is being closed")
                || words.contains("pipe has been ended");
    }
}
