package bootmend.device.system;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** Runs programs that get no input, end within a limit or are killed with all that they started, and print a bounded amount. */
final class LimitedPrograms implements Programs {

    /** For what a program leaves in its pipes, once it has ended. No source. */
    private static final Duration REST = Duration.ofSeconds(1);

    private final Duration limit;
    private final int mostOutput;

    LimitedPrograms(Duration limit, int mostOutput) {
        this.limit = limit;
        this.mostOutput = mostOutput;
    }

    @Override
    public Result run(List<String> command) throws IOException {
        Process process = new ProcessBuilder(command).start();
        try {
            process.getOutputStream().close();
            Drain output = drain(process.getInputStream());
            Drain errors = drain(process.getErrorStream());
            if (!process.waitFor(limit.toNanos(), TimeUnit.NANOSECONDS)) {
                throw new IOException(command.get(0) + " did not end within " + limit.toSeconds() + " seconds");
            }
            // What it started may live on and keep the pipes open, so their end is no more waited for than this.
            output.join(REST.toMillis());
            errors.join(REST.toMillis());
            return new Result(process.exitValue(), output.text(), errors.text());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(command.get(0) + " was interrupted", e);
        } finally {
            kill(process);
        }
    }

    /** The children first are listed, because they are nobody's any more once their parent is gone. */
    private static void kill(Process process) {
        List<ProcessHandle> children = process.descendants().toList();
        process.destroyForcibly();
        children.stream()
                .flatMap(child -> Stream.concat(Stream.of(child), child.descendants()))
                .forEach(ProcessHandle::destroyForcibly);
    }

    private Drain drain(InputStream stream) {
        Drain drain = new Drain(stream, mostOutput);
        drain.setDaemon(true);
        drain.start();
        return drain;
    }

    /** Reads a stream to its end, so that the program never waits for a reader, and keeps the first of it. */
    private static final class Drain extends Thread {

        private static final int PIECE = 1 << 13;

        private final InputStream stream;
        private final int most;
        private final ByteArrayOutputStream kept = new ByteArrayOutputStream();

        Drain(InputStream stream, int most) {
            super("output of a program");
            this.stream = stream;
            this.most = most;
        }

        @Override
        public void run() {
            byte[] piece = new byte[PIECE];
            try (stream) {
                for (int n = stream.read(piece); n >= 0; n = stream.read(piece)) {
                    kept.write(piece, 0, Math.min(n, most - kept.size()));
                }
            } catch (IOException e) {
                // The program was killed; what it printed until then is kept.
                return;
            }
        }

        String text() {
            return kept.toString(StandardCharsets.UTF_8);
        }
    }
}
