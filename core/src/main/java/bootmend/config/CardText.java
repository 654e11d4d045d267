package bootmend.config;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;

/** Turns bytes from a card into text: UTF-8 where they are valid UTF-8, else ISO-8859-1, so nothing is ever lost. */
public final class CardText {

    private CardText() {}

    /** Decodes all of {@code bytes}; never fails. */
    public static String decode(byte[] bytes) {
        return decode(bytes, new ByteRange(0, bytes.length));
    }

    static String decode(byte[] bytes, ByteRange range) {
        ByteBuffer chosen = ByteBuffer.wrap(bytes, range.from(), range.length());
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(chosen.duplicate())
                    .toString();
        } catch (CharacterCodingException notUtf8) {
            return StandardCharsets.ISO_8859_1.decode(chosen).toString();
        }
    }
}
