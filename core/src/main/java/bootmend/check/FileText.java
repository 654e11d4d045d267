package bootmend.check;

/**
 * The first bytes of a small file.
 *
 * @param bytes at most {@value #MOST_BYTES} of them
 * @param whole whether that is all of it
 */
public record FileText(byte[] bytes, boolean whole) {

    /** How much of a file is read. No source: a bound against hostile cards; such files are a few KiB. */
    public static final int MOST_BYTES = 65_536;

    public FileText {
        bytes = bytes.clone();
    }

    @Override
    public byte[] bytes() {
        return bytes.clone();
    }
}
