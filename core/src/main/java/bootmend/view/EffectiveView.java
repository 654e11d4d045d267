package bootmend.view;

import java.util.List;
import java.util.Optional;

/**
 * What a tuning key comes to on a board, as a user is shown it.
 *
 * @param value as the board takes it; where it depends, the latest one that may count
 * @param unit of the value, such as {@code MHz}
 * @param state {@code set}, {@code depends} or {@code ignored}
 * @param file the file of the line that gives it
 * @param line counts from 1
 * @param setBy the key on that line: the key itself, or one that sets several
 * @param dependsOn what it depends on; empty unless the state is {@code depends}
 * @param otherwise where it depends, what else it may come to, the latest line first, at most 16 of them
 * @param mayBeStock whether stock is one more possibility
 * @param stock every value that stock may have, several where that hangs on the revision; empty where none is published
 * @param percent how far above stock, once for each value of {@code stock}; for clocks alone
 * @param volts the voltage; for {@code microvolt} keys the change; where it is published
 * @param reason why the board ignores the key; empty unless the state is {@code ignored}
 */
public record EffectiveView(
        String key,
        String value,
        String unit,
        String state,
        String file,
        int line,
        String setBy,
        List<String> dependsOn,
        List<OtherValue> otherwise,
        boolean mayBeStock,
        List<Long> stock,
        List<Double> percent,
        Optional<Double> volts,
        String reason) {

    /** A value that the key may come to instead, and the line that gives it. */
    public record OtherValue(String value, String file, int line) {}

    public EffectiveView {
        dependsOn = List.copyOf(dependsOn);
        otherwise = List.copyOf(otherwise);
        stock = List.copyOf(stock);
        percent = List.copyOf(percent);
    }
}
