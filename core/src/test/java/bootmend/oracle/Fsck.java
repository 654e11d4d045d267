package bootmend.oracle;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import bootmend.fixtures.FatLayout;
import bootmend.fixtures.SparseDisk;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** Asks dosfstools' {@code fsck.fat -n} what it makes of a card's boot partition; skips the test where it is missing. */
public final class Fsck {

    private static final int PIECE = 1 << 16;
    private static final String PROGRAM = "fsck.fat";

    private Fsck() {}

    /** What it prints between its own name and the count of files: nothing for a clean volume. */
    public static String complaints(SparseDisk card, FatLayout layout, Path folder) throws IOException {
        return complaints(volume(card, layout), folder);
    }

    /** The same of a volume on its own. */
    public static String complaints(SparseDisk volume, Path folder) throws IOException {
        Optional<Path> program = find();
        assumeTrue(program.isPresent(), PROGRAM + " is not installed: this check was skipped");
        Path image = folder.resolve("volume.img");
        Path out = folder.resolve("fsck.out");
        Files.deleteIfExists(image);
        volume.writeTo(image);
        Process process = new ProcessBuilder(program.get().toString(), "-n", image.toString())
                .redirectErrorStream(true)
                .redirectOutput(out.toFile())
                .start();
        process.getOutputStream().close();
        try {
            if (!process.waitFor(30, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IOException(PROGRAM + " did not end");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
        String text = new String(Files.readAllBytes(out), StandardCharsets.ISO_8859_1);
        List<String> lines = text.lines().toList();
        boolean clean =
                process.exitValue() == 0 && lines.size() == 2 && lines.get(1).contains(" files, ");
        return clean ? "" : text;
    }

    private static SparseDisk volume(SparseDisk card, FatLayout layout) {
        long size = Math.min(layout.spec().bytes(), card.getSize() - layout.volumeOffset());
        SparseDisk volume = new SparseDisk(size, 512);
        for (long at = 0; at < size; at += PIECE) {
            volume.patch(at, card.toBytes(layout.volumeOffset() + at, (int) Math.min(PIECE, size - at)));
        }
        return volume;
    }

    /** System folders are looked into as well, because a user's search path often leaves them out. */
    private static Optional<Path> find() {
        String path = System.getenv("PATH") + File.pathSeparator + "/usr/sbin" + File.pathSeparator + "/sbin";
        return Stream.of(path.split(File.pathSeparator))
                .map(dir -> Path.of(dir, PROGRAM))
                .filter(Files::isExecutable)
                .findFirst();
    }
}
