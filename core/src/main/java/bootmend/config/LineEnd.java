package bootmend.config;

/** How a line of the config file ends. */
public enum LineEnd {
    LF('\n'),
    CRLF('\r', '\n'),
    /**
     * A lone carriage return. No source says that the board takes it as a line end; it is taken as one here so that
     * a setting after it is never overlooked.
     */
    CR('\r'),
    /** The file stops after the line's last byte. */
    NONE();

    private final byte[] bytes;

    LineEnd(int... bytes) {
        this.bytes = new byte[bytes.length];
        for (int i = 0; i < bytes.length; i++) {
            this.bytes[i] = (byte) bytes[i];
        }
    }

    /** The bytes of this line end, none to two. */
    public byte[] bytes() {
        return bytes.clone();
    }
}
