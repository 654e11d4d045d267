package bootmend.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** Runs the packaged jar as a user would: a process of its own, without a terminal. */
final class Bootmend {

    private static final long LIMIT_SECONDS = 60;

    private final Path home;
    private final Path scratch;

    /** @param scratch an empty folder for undo records and captured output */
    Bootmend(Path scratch) {
        this.scratch = scratch;
        this.home = scratch.resolve("records");
    }

    /** What a run printed and how it ended. */
    record Result(int code, String out, String err) {}

    Path home() {
        return home;
    }

    /** On a terminal so wide that no sentence is broken. */
    Result run(Object... arguments) throws IOException, InterruptedException {
        return run(Map.of("COLUMNS", "400"), List.of(), arguments);
    }

    /** Where nobody says how wide the terminal is. */
    Result runWithoutWidth(Object... arguments) throws IOException, InterruptedException {
        return run(Map.of(), List.of(), arguments);
    }

    /** The names of all classes that a run loads. */
    List<String> loadedClasses(Object... arguments) throws IOException, InterruptedException {
        Path log = Files.createTempFile(scratch, "classes", ".txt");
        run(Map.of(), List.of("-Xshare:off", "-Xlog:class+load:file=" + log + ":none"), arguments);
        try (Stream<String> lines = Files.lines(log)) {
            return lines.map(line -> line.split(" ", 2)[0]).toList();
        }
    }

    /** With standard output that goes to a file or device. */
    Result runInto(Path standardOut, Object... arguments) throws IOException, InterruptedException {
        return run(Map.of("COLUMNS", "400"), List.of(), standardOut, arguments);
    }

    private Result run(Map<String, String> environment, List<String> options, Object... arguments)
            throws IOException, InterruptedException {
        return run(environment, options, Files.createTempFile(scratch, "out", ".txt"), arguments);
    }

    private Result run(Map<String, String> environment, List<String> options, Path out, Object... arguments)
            throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        Stream.of(System.getProperty("bootmend.java.options", "").split(" ", -1))
                .filter(option -> !option.isBlank())
                .forEach(command::add);
        command.addAll(options);
        command.addAll(List.of("-jar", System.getProperty("bootmend.jar")));
        for (Object argument : arguments) {
            command.add(argument.toString());
        }
        Path err = Files.createTempFile(scratch, "err", ".txt");
        ProcessBuilder builder = new ProcessBuilder(command);
        builder.environment().remove("COLUMNS");
        builder.environment().putAll(environment);
        builder.environment().put("BOOTMEND_HOME", home.toString());
        builder.redirectInput(ProcessBuilder.Redirect.from(
                Files.createTempFile(scratch, "in", ".txt").toFile()));
        builder.redirectOutput(out.toFile()).redirectError(err.toFile());
        Process process = builder.start();
        if (!process.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new AssertionError("no end after " + LIMIT_SECONDS + " s: " + command);
        }
        return new Result(
                process.exitValue(),
                Files.isRegularFile(out) ? new String(Files.readAllBytes(out), StandardCharsets.UTF_8) : "",
                Files.readString(err, StandardCharsets.UTF_8));
    }
}
