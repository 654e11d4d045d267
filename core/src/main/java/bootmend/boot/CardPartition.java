package bootmend.boot;

import java.util.Optional;

/**
 * A partition as the card's table gives it, whether or not the card reaches so far.
 *
 * @param number counts from 1; 0 for a volume on a card without a table
 * @param type the table's type, such as {@code 0x83} or a type GUID
 * @param start first byte on the card
 * @param length bytes
 * @param id what {@code PARTUUID=} names it by, in lower case; empty where the table gives none
 * @param name its name in a GPT
 */
public record CardPartition(
        int number, String type, long start, long length, Optional<String> id, Optional<String> name) {

    /** First byte behind it. */
    public long end() {
        return start + length;
    }
}
