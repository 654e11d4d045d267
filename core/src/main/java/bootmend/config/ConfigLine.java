package bootmend.config;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.Optional;

/** One line of a config file with its bytes, its line end, its kind and the section it stands in. */
public final class ConfigLine {

    /**
     * How many bytes of a line the board reads; the rest is ignored (older firmware: 78).
     *
     * <p>Source: "File format", config_txt/what_is_config_txt.adoc, commit 57ad5821. The source counts characters;
     * one byte is taken as one character, and a byte-order mark is not counted (no source).
     */
    public static final int LIMIT = 98;

    private final int number;
    private final byte[] content;
    private final LineEnd end;
    private final String section;
    private final LineKind kind;

    ConfigLine(int number, byte[] content, LineEnd end, String section) {
        this.number = number;
        this.content = content;
        this.end = end;
        this.section = section;
        this.kind = LineClassifier.classify(content);
    }

    /** Line number, counted from 1. */
    public int number() {
        return number;
    }

    /** The line's bytes without its line end. */
    public byte[] bytes() {
        return content.clone();
    }

    /** The whole line as text without its line end; not yet safe to show, see {@link VisibleText}. */
    public String text() {
        return CardText.decode(content);
    }

    public LineEnd end() {
        return end;
    }

    public LineKind kind() {
        return kind;
    }

    /** The latest section line above this one, brackets included; empty above the first section. */
    public Optional<String> section() {
        return Optional.ofNullable(section);
    }

    /** Whether the line runs on past what the board reads. */
    public boolean isPastLimit() {
        return content.length > LIMIT;
    }

    /** Whether the board does something with this line: it is neither blank nor a comment. */
    public boolean isLive() {
        return !(kind instanceof LineKind.Blank
                || kind instanceof LineKind.Comment
                || kind instanceof LineKind.CommentedSetting);
    }

    /** Whether it is a remark or a setting that is commented out. */
    public boolean isComment() {
        return kind instanceof LineKind.Comment || kind instanceof LineKind.CommentedSetting;
    }

    /** The bytes that stand behind the comment's {@code #}, without the blanks in front of it; all bytes of another line. */
    public byte[] uncommented() {
        int from = 0;
        while (isComment() && from < content.length && (content[from] == '#' || Blanks.is(content[from]))) {
            from++;
        }
        return Arrays.copyOfRange(content, from, content.length);
    }

    void writeTo(ByteArrayOutputStream out) {
        out.writeBytes(content);
        out.writeBytes(end.bytes());
    }

    @Override
    public String toString() {
        return number + ": " + VisibleText.of(content);
    }
}
