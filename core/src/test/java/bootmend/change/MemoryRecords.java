package bootmend.change;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** A file system for undo records in memory, whose every access can fail: before it did anything, or after it did all. */
final class MemoryRecords implements RecordFiles {

    /** When an access fails. */
    enum Failure {
        /** Nothing of it happened. */
        BEFORE,
        /** A new file got the first half of its bytes; anything else did not happen. */
        HALFWAY,
        /** It happened, and then the failure was told. */
        AFTER
    }

    private final Map<Path, byte[]> files;
    private int untilFailure = Integer.MAX_VALUE;
    private Failure failure = Failure.BEFORE;
    private boolean failsForEver;
    private int accesses;

    MemoryRecords() {
        this(Map.of());
    }

    /** With these files in it. */
    MemoryRecords(Map<Path, byte[]> files) {
        this.files = new TreeMap<>(files);
    }

    Map<Path, byte[]> files() {
        return files;
    }

    /** The {@code access}th from now fails, counted from 1. */
    void failAt(int access, Failure how, boolean forEver) {
        untilFailure = access;
        failure = how;
        failsForEver = forEver;
    }

    void heal() {
        untilFailure = Integer.MAX_VALUE;
    }

    int accesses() {
        return accesses;
    }

    private boolean fails() {
        accesses++;
        untilFailure--;
        return untilFailure == 0 || failsForEver && untilFailure < 0;
    }

    private void run(Change whole, Change half) throws IOException {
        if (!fails()) {
            whole.run();
            return;
        }
        if (failure == Failure.AFTER) {
            whole.run();
        } else if (failure == Failure.HALFWAY) {
            half.run();
        }
        throw new IOException("no space left on device");
    }

    private interface Change {
        void run() throws IOException;
    }

    @Override
    public void create(Path file, byte[] bytes) throws IOException {
        if (files.containsKey(file)) {
            throw new FileAlreadyExistsException(file.toString());
        }
        run(() -> files.put(file, bytes), () -> files.put(file, Arrays.copyOf(bytes, bytes.length / 2)));
    }

    @Override
    public void move(Path from, Path to) throws IOException {
        if (!files.containsKey(from)) {
            throw new NoSuchFileException(from.toString());
        }
        run(() -> files.put(to, files.remove(from)), () -> {});
    }

    @Override
    public void delete(Path file) throws IOException {
        if (!files.containsKey(file)) {
            throw new NoSuchFileException(file.toString());
        }
        run(() -> files.remove(file), () -> {});
    }

    @Override
    public byte[] read(Path file, int most) throws IOException {
        if (fails()) {
            throw new IOException("input/output error");
        }
        if (!files.containsKey(file)) {
            throw new NoSuchFileException(file.toString());
        }
        return files.get(file);
    }

    @Override
    public List<Path> list(Path folder) throws IOException {
        if (fails()) {
            throw new IOException("input/output error");
        }
        return files.keySet().stream()
                .filter(file -> file.getParent().equals(folder))
                .toList();
    }

    @Override
    public Instant lastWritten(Path file) {
        return Instant.now();
    }
}
