package bootmend.device.system;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The system's own programs, which bootmend asks about disks; tests put recorded answers in their place. */
@FunctionalInterface
interface Programs {

    /** Seconds after which a program that does not end is given up. No source: far above what ejecting a card takes. */
    int LIMIT_SECONDS = 30;
    /** No source: far above any answer. */
    int MOST_OUTPUT = 4 << 20;

    /** How a program ended and what it printed on both streams. */
    record Result(int code, String output) {}

    /** @throws IOException when it cannot be started or does not end */
    Result run(List<String> command) throws IOException;

    static Programs ofThisComputer() {
        return command -> {
            Process process =
                    new ProcessBuilder(command).redirectErrorStream(true).start();
            process.getOutputStream().close();
            try {
                byte[] output = process.getInputStream().readNBytes(MOST_OUTPUT);
                if (!process.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS)) {
                    throw new IOException(command.get(0) + " did not end within " + LIMIT_SECONDS + " seconds");
                }
                return new Result(process.exitValue(), new String(output, StandardCharsets.UTF_8));
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IOException(command.get(0) + " was interrupted", e);
            } finally {
                process.destroyForcibly();
            }
        };
    }
}
