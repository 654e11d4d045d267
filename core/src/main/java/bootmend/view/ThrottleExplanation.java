package bootmend.view;

import java.util.List;

/**
 * What a board's throttle report says.
 *
 * @param mask the report, such as {@code 0x50005}
 * @param bits the set bits that have a published meaning
 * @param unknown the other set bits as a mask, {@code 0x0} where there are none
 * @param source where the meanings come from
 */
public record ThrottleExplanation(
        String mask, List<BitView> bits, String unknown, List<CautionView> cautions, String source)
        implements Explanation {

    /** One bit, its number counted from 0. */
    public record BitView(int bit, String meaning) {}

    public ThrottleExplanation {
        bits = List.copyOf(bits);
        cautions = List.copyOf(cautions);
    }
}
