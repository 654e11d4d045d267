package bootmend.earlier;

/** Tells text from other bytes. */
final class TextBytes {

    private TextBytes() {}

    /** Whether a byte may stand in a plain text; those over 127 may. */
    static boolean isText(byte b) {
        return b >= ' ' && b != 0x7F || b < 0 || b == '\t' || b == '\n' || b == '\r';
    }

    static boolean isText(byte[] bytes) {
        return isText(bytes, 0, bytes.length);
    }

    static boolean isText(byte[] bytes, int from, int to) {
        for (int i = from; i < to; i++) {
            if (!isText(bytes[i])) {
                return false;
            }
        }
        return true;
    }

    /** Where text that begins at {@code from} ends: at the first byte that is none, or at {@code to}. */
    static int end(byte[] bytes, int from, int to) {
        int at = from;
        while (at < to && isText(bytes[at])) {
            at++;
        }
        return at;
    }

    static boolean isZero(byte[] bytes, int from, int to) {
        for (int i = from; i < to; i++) {
            if (bytes[i] != 0) {
                return false;
            }
        }
        return true;
    }
}
