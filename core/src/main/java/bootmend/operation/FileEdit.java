package bootmend.operation;

import bootmend.change.FileChange;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.config.LineEdit;
import bootmend.config.LineEnd;
import bootmend.config.SavedText;
import bootmend.operation.LineChange.Line;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What becomes of one file, exactly: {@link #applyTo} makes of the file it is shown against the file as it will be.
 *
 * @param path from the boot partition's root
 * @param kind whether the file was there and stays
 * @param against the file whose lines stand in {@code lines} as they are before; empty where all lines are new
 * @param lines in the file's order; none for a file that is removed, or that is no text
 * @param body the whole new content of a file that is no text
 */
public record FileEdit(
        String path, Kind kind, Optional<String> against, List<LineChange> lines, Optional<FileBody> body) {

    /** Whether the file was there and stays. */
    public enum Kind {
        CHANGED,
        ADDED,
        REMOVED,
        /** What stood there is no text with lines that could be compared; all of it is new. */
        REWRITTEN,
        /** It was there, and is no text or becomes none: all of it is new. */
        REPLACED
    }

    /** A text larger than any that is edited by lines is shown by its size. */
    private static final int MOST_TEXT = 1 << 20;

    public FileEdit {
        lines = List.copyOf(lines);
    }

    /** Of a text. */
    public FileEdit(String path, Kind kind, Optional<String> against, List<LineChange> lines) {
        this(path, kind, against, lines, Optional.empty());
    }

    /** Each file shown against itself. */
    static List<FileEdit> of(List<FileChange> files) {
        return files.stream().map(FileEdit::of).toList();
    }

    static FileEdit of(FileChange file) {
        if (file.after() == null) {
            return new FileEdit(file.path(), Kind.REMOVED, Optional.empty(), List.of());
        }
        if (!isText(file.after()) || file.before() != null && !isText(file.before())) {
            return new FileEdit(
                    file.path(),
                    file.before() == null ? Kind.ADDED : Kind.REPLACED,
                    Optional.empty(),
                    List.of(),
                    Optional.of(new FileBody(file.after())));
        }
        if (file.before() == null) {
            return new FileEdit(file.path(), Kind.ADDED, Optional.empty(), between(file.path(), null, file.after()));
        }
        if (isWide(file.before()) || isWide(file.after())) {
            return new FileEdit(
                    file.path(), Kind.REWRITTEN, Optional.empty(), between(file.path(), null, file.after()));
        }
        return new FileEdit(
                file.path(), Kind.CHANGED, Optional.of(file.path()), between(file.path(), file.before(), file.after()));
    }

    /**
     * A file that is new, shown against another that it is like.
     *
     * @param other the other file's path
     * @param content the other file's bytes
     */
    static FileEdit added(String path, byte[] after, String other, byte[] content) {
        return isWide(content)
                ? of(new FileChange(path, null, after))
                : new FileEdit(path, Kind.ADDED, Optional.of(other), between(path, content, after));
    }

    /** UTF-16 is text too, which a config file may be saved as. */
    private static boolean isText(byte[] bytes) {
        return bytes.length <= MOST_TEXT && (isWide(bytes) || !holdsZero(bytes));
    }

    private static boolean holdsZero(byte[] bytes) {
        for (byte each : bytes) {
            if (each == 0) {
                return true;
            }
        }
        return false;
    }

    private static boolean isWide(byte[] bytes) {
        return SavedText.of(bytes).problems().contains(SavedText.Problem.UTF_16);
    }

    /** The lines that make one text of another; a text that is not there has none. */
    private static List<LineChange> between(String path, byte[] before, byte[] after) {
        List<LineChange> changes = new ArrayList<>();
        for (LineEdit<Line> edit : LineEdit.between(lines(before), lines(after), Line::equals)) {
            List<Line> old = edit.old();
            List<Line> changed = edit.changed();
            int first = edit.at() + 1;
            for (int i = 0; i < Math.max(old.size(), changed.size()); i++) {
                changes.add(new LineChange(path, first + Math.min(i, old.size()), at(old, i), at(changed, i)));
            }
        }
        return changes;
    }

    private static Optional<Line> at(List<Line> lines, int index) {
        return index < lines.size() ? Optional.of(lines.get(index)) : Optional.empty();
    }

    private static List<Line> lines(byte[] bytes) {
        List<Line> lines = new ArrayList<>();
        if (bytes == null) {
            return lines;
        }
        ConfigDocument document = ConfigDocument.parse(bytes);
        int mark = bytes.length - length(document);
        for (ConfigLine line : document.lines()) {
            byte[] content = line.bytes();
            if (mark > 0) {
                byte[] marked = Arrays.copyOf(bytes, mark + content.length);
                content = marked;
                mark = 0;
            }
            lines.add(new Line(content, line.end()));
        }
        if (mark > 0) {
            lines.add(new Line(Arrays.copyOf(bytes, mark), LineEnd.NONE));
        }
        return lines;
    }

    /** Bytes of all lines, without what belongs to the file as a whole. */
    private static int length(ConfigDocument document) {
        return document.lines().stream()
                .mapToInt(line -> line.bytes().length + line.end().bytes().length)
                .sum();
    }

    /**
     * The file as it will be; null where it is removed.
     *
     * @param base the bytes of the file that this is shown against, or null where that is none
     * @throws IllegalArgumentException where a line of {@code base} is not as it is shown
     */
    byte[] applyTo(byte[] base) {
        if (kind == Kind.REMOVED) {
            return null;
        }
        if (body.isPresent()) {
            return body.get().bytes();
        }
        Map<Integer, List<LineChange>> byLine = new HashMap<>();
        lines.forEach(change -> byLine.computeIfAbsent(change.line(), number -> new ArrayList<>())
                .add(change));
        List<Line> old = lines(against.isPresent() ? base : null);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        for (int number = 1; number <= old.size() + 1; number++) {
            Optional<Line> kept = number <= old.size() ? Optional.of(old.get(number - 1)) : Optional.empty();
            for (LineChange change : byLine.getOrDefault(number, List.of())) {
                if (change.old().isPresent()) {
                    if (!change.old().equals(kept)) {
                        throw new IllegalArgumentException("line " + number + " of " + path + " is not as shown");
                    }
                    kept = Optional.empty();
                }
                change.changed().ifPresent(line -> write(line, out));
            }
            kept.ifPresent(line -> write(line, out));
        }
        return out.toByteArray();
    }

    private static void write(Line line, ByteArrayOutputStream out) {
        out.writeBytes(line.bytes());
        out.writeBytes(line.end().bytes());
    }
}
