package bootmend.tuning;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A decoded revision code.
 *
 * @param code the code, 0 to 0xFFFFFFFF
 * @param newStyle whether the code is made of bit fields
 * @param board the board; empty where bootmend does not know it
 * @param type board type number, 0 to 255; new style only
 * @param number revision number, 0 to 15, such as 4 for revision 1.4; new style only
 * @param name revision as people write it, such as {@code 1.4}
 * @param chip chip number; empty where bootmend does not know it
 * @param memoryMegabytes memory in MB; empty where the code does not tell
 * @param maker number of the factory, 0 to 15; new style only
 * @param warranty state of the warranty bit
 * @param barred what the code bars
 * @param unknownBits set bits that no published meaning covers, as a mask
 */
public record Revision(
        long code,
        boolean newStyle,
        Optional<Board> board,
        OptionalInt type,
        OptionalInt number,
        String name,
        Optional<String> chip,
        OptionalInt memoryMegabytes,
        OptionalInt maker,
        WarrantyState warranty,
        List<RevisionFlag> barred,
        long unknownBits) {

    /** The code as the board prints it: hexadecimal, at least four digits. */
    public String codeText() {
        return String.format("%04x", code);
    }
}
