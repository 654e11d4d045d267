package bootmend.oracle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** General-purpose programs, run on a file of the test's own; a test that needs one which is not installed is skipped. */
public final class Tool {

    private static final String PATH = System.getenv("PATH") + ":/usr/sbin:/sbin";

    private Tool() {}

    public static void need(String... programs) {
        for (String program : programs) {
            assumeTrue(isInstalled(program), program + " is not installed: this check was skipped");
        }
    }

    public static boolean isInstalled(String program) {
        return Stream.of(PATH.split(File.pathSeparator)).anyMatch(dir -> Files.isExecutable(Path.of(dir, program)));
    }

    /** What the program printed; it must end well. */
    public static byte[] run(String... command) throws IOException {
        Path out = Files.createTempFile("tool", ".out");
        try {
            int code = start(out, command);
            assertThat(code)
                    .as("%s: %s", List.of(command), Files.readString(out, StandardCharsets.ISO_8859_1))
                    .isZero();
            return Files.readAllBytes(out);
        } finally {
            Files.delete(out);
        }
    }

    public static String text(String... command) throws IOException {
        return new String(run(command), StandardCharsets.ISO_8859_1);
    }

    /** What the checker says of a volume, without its last line, which counts clusters. */
    static List<String> check(Path volume) throws IOException {
        Path out = Files.createTempFile("tool", ".out");
        try {
            start(out, "fsck.fat", "-n", volume.toString());
            return Files.readAllLines(out, StandardCharsets.ISO_8859_1).stream()
                    .filter(line -> !line.matches(".* files, \\d+/\\d+ clusters.*"))
                    .toList();
        } finally {
            Files.delete(out);
        }
    }

    private static int start(Path out, String... command) throws IOException {
        ProcessBuilder builder =
                new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(out.toFile());
        builder.environment().put("PATH", PATH);
        builder.environment().put("MTOOLS_SKIP_CHECK", "1");
        Process process = builder.start();
        process.getOutputStream().close();
        try {
            if (!process.waitFor(30, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IOException(command[0] + " did not end");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
        return process.exitValue();
    }
}
