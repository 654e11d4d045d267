package bootmend.config;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/**
 * How a desktop editor saved a config file, where that keeps a board from reading it, and the same text as a board reads
 * it.
 *
 * <p>The board reads one byte a character, line by line (source: "File format", config_txt/what_is_config_txt.adoc,
 * commit 57ad5821: "plain-text"); what it makes of the forms below is common practice, no source.
 */
public final class SavedText {

    /** A form that a board does not read. */
    public enum Problem {
        UTF_16("config-utf16", "it is saved as UTF-16, of which a board reads no line"),
        BYTE_ORDER_MARK(
                "config-utf8-mark",
                "a UTF-8 byte-order mark stands in front of its first line, which a board then takes for something else"),
        LONE_CR("config-cr-only", "its lines end in CR without LF, so a board may see one long line"),
        TYPOGRAPHIC_QUOTES(
                "config-typographic-quotes",
                "typographic quotes stand in active lines, where a board takes them as part of the value");

        private final String id;
        private final String words;

        Problem(String id, String words) {
            this.id = id;
            this.words = words;
        }

        /** Lower-case words joined by hyphens, the same in every version. */
        public String id() {
            return id;
        }

        /** A clause on what was found and what follows from it. */
        public String words() {
            return words;
        }
    }

    private static final byte[] MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};
    /** Of a plain text's characters, this share at least is ASCII: their high bytes are zero. */
    private static final double PLAINLY = 0.75;

    private static final int MIN_UTF16 = 4;

    private final Set<Problem> problems = EnumSet.noneOf(Problem.class);
    private final Optional<byte[]> repaired;

    private SavedText(byte[] bytes) {
        Optional<byte[]> text = utf8(bytes);
        this.repaired = text.map(this::withoutMark).map(this::withLineFeeds).map(this::withPlainQuotes);
    }

    public static SavedText of(byte[] bytes) {
        return new SavedText(bytes);
    }

    public Set<Problem> problems() {
        return Set.copyOf(problems);
    }

    /** The text as a board reads it; the same bytes where there is no problem, nothing where it cannot be made out. */
    public Optional<byte[]> repaired() {
        return repaired;
    }

    private Optional<byte[]> utf8(byte[] bytes) {
        Optional<Charset> wide = wideCharset(bytes);
        if (wide.isEmpty()) {
            return Optional.of(bytes);
        }
        problems.add(Problem.UTF_16);
        return decoded(bytes, wide.get())
                .map(text -> text.startsWith("\uFEFF") ? text.substring(1) : text)
                .map(text -> text.getBytes(StandardCharsets.UTF_8));
    }

    private static Optional<Charset> wideCharset(byte[] bytes) {
        if (bytes.length >= 2 && bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE) {
            return Optional.of(StandardCharsets.UTF_16LE);
        }
        if (bytes.length >= 2 && bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF) {
            return Optional.of(StandardCharsets.UTF_16BE);
        }
        if (bytes.length < MIN_UTF16 || bytes.length % 2 != 0) {
            return Optional.empty();
        }
        if (isPlainly(bytes, StandardCharsets.UTF_16LE, 1)) {
            return Optional.of(StandardCharsets.UTF_16LE);
        }
        return isPlainly(bytes, StandardCharsets.UTF_16BE, 0)
                ? Optional.of(StandardCharsets.UTF_16BE)
                : Optional.empty();
    }

    /** @param highByte where in each pair the high byte stands */
    private static boolean isPlainly(byte[] bytes, Charset charset, int highByte) {
        int ascii = 0;
        for (int i = 0; i < bytes.length; i += 2) {
            ascii += bytes[i + highByte] == 0 && bytes[i + 1 - highByte] > 0 ? 1 : 0;
        }
        return ascii >= PLAINLY * bytes.length / 2
                && decoded(bytes, charset)
                        .filter(text -> text.indexOf('\0') < 0)
                        .isPresent();
    }

    private static Optional<String> decoded(byte[] bytes, Charset charset) {
        try {
            return Optional.of(
                    charset.newDecoder().decode(ByteBuffer.wrap(bytes)).toString());
        } catch (CharacterCodingException e) {
            return Optional.empty();
        }
    }

    private byte[] withoutMark(byte[] bytes) {
        byte[] bare = bytes;
        while (ConfigDocument.parse(bare).hasByteOrderMark()) {
            problems.add(Problem.BYTE_ORDER_MARK);
            bare = Arrays.copyOfRange(bare, MARK.length, bare.length);
        }
        return bare;
    }

    private byte[] withLineFeeds(byte[] bytes) {
        ConfigDocument document = ConfigDocument.parse(bytes);
        if (document.lines().stream().noneMatch(line -> line.end() == LineEnd.CR)) {
            return bytes;
        }
        problems.add(Problem.LONE_CR);
        ByteArrayOutputStream out = new ByteArrayOutputStream(bytes.length);
        for (ConfigLine line : document.lines()) {
            out.writeBytes(line.bytes());
            out.writeBytes((line.end() == LineEnd.CR ? LineEnd.LF : line.end()).bytes());
        }
        return out.toByteArray();
    }

    private byte[] withPlainQuotes(byte[] bytes) {
        ByteArrayOutputStream out = new ByteArrayOutputStream(bytes.length);
        for (ConfigLine line : ConfigDocument.parse(bytes).lines()) {
            byte[] plain = line.isLive() ? Quotes.plain(line) : line.bytes();
            if (plain.length != line.bytes().length) {
                problems.add(Problem.TYPOGRAPHIC_QUOTES);
            }
            out.writeBytes(plain);
            out.writeBytes(line.end().bytes());
        }
        return out.toByteArray();
    }
}
