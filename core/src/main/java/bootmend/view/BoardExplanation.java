package bootmend.view;

import java.util.List;

/**
 * What a board is.
 *
 * @param board board id, such as {@code pi4}
 * @param chip chip number
 * @param filters the model filters whose lines it reads, in brackets
 * @param types type numbers of its revision codes, each as {@code 0x11}
 * @param warrantyBit what it does with the warranty bit
 * @param stock its stock value of each key that has one
 * @param volts how it turns the steps of voltage keys into volts
 * @param bootFiles what it must find on a card, as phrases
 * @param note more to know, possibly empty
 */
public record BoardExplanation(
        String board,
        String chip,
        List<String> filters,
        List<String> types,
        String warrantyBit,
        List<KeyStock> stock,
        List<VoltsView> volts,
        List<String> bootFiles,
        String note,
        List<CautionView> cautions,
        List<String> sources)
        implements Explanation {

    /** A key's stock value with its unit, in words. */
    public record KeyStock(String key, String stock) {}

    /**
     * Volts behind the steps of a key.
     *
     * @param min lowest step
     * @param minVolts voltage there
     * @param stockVolts voltage at step 0
     * @param max highest step
     * @param maxVolts voltage there
     * @param stepVolts voltage between two steps
     */
    public record VoltsView(
            String key, long min, double minVolts, double stockVolts, long max, double maxVolts, double stepVolts) {}

    public BoardExplanation {
        filters = List.copyOf(filters);
        types = List.copyOf(types);
        stock = List.copyOf(stock);
        volts = List.copyOf(volts);
        bootFiles = List.copyOf(bootFiles);
        cautions = List.copyOf(cautions);
        sources = List.copyOf(sources);
    }
}
