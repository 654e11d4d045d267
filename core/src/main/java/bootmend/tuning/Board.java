package bootmend.tuning;

import java.util.List;

/**
 * A board that the config file can be read on.
 *
 * @param id the board's own model filter, such as {@code pi4}
 * @param chip chip number, such as {@code BCM2711}
 * @param sees every model filter whose lines the board reads, its own first
 * @param types type numbers of the new-style revision code, each 0 to 255
 * @param warrantyBit what the board does with the warranty bit
 * @param knowsTryOnce whether its boot firmware knows the try-once flag
 * @param note more to know, possibly empty
 */
public record Board(
        String id,
        String chip,
        List<String> sees,
        List<Integer> types,
        WarrantyBit warrantyBit,
        boolean knowsTryOnce,
        String note) {}
