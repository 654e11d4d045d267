package bootmend.view;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What a revision code says.
 *
 * @param code the code, in hexadecimal
 * @param style {@code new} or {@code old}
 * @param board board id; empty where bootmend does not know it
 * @param type board type number such as {@code 0x11}; new style only
 * @param revision such as {@code 1.4}
 * @param chip chip number; empty where bootmend does not know it
 * @param memoryMegabytes memory in MB; empty where the code does not tell
 * @param maker number of the factory; new style only
 * @param warrantyVoid whether the warranty bit is set
 * @param warranty the same in words, with what the board does with that bit
 * @param barred what the code bars, as phrases
 * @param unknownBits set bits that no published meaning covers, as a mask, {@code 0x0} where there are none
 * @param sources where all this is published, or that it is not
 */
public record RevisionView(
        String code,
        String style,
        Optional<String> board,
        Optional<String> type,
        String revision,
        Optional<String> chip,
        OptionalInt memoryMegabytes,
        OptionalInt maker,
        boolean warrantyVoid,
        String warranty,
        List<String> barred,
        String unknownBits,
        List<String> sources) {

    public RevisionView {
        barred = List.copyOf(barred);
        sources = List.copyOf(sources);
    }
}
