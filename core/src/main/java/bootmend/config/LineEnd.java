package bootmend.config;

import java.nio.charset.StandardCharsets;

/** How a line of the config file ends. */
public enum LineEnd {
    LF("\n"),
    CRLF("\r\n"),
    /**
     * A lone carriage return. No source says that the board takes it as a line end; it is taken as one here so that
     * a setting after it is never overlooked.
     */
    CR("\r"),
    /** The file stops after the line's last byte. */
    NONE("");

    private final String text;

    LineEnd(String text) {
        this.text = text;
    }

    /** The bytes of this line end, none to two. */
    public byte[] bytes() {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
