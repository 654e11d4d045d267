package bootmend.view;

import java.util.List;
import java.util.Optional;

/**
 * What a card's config file comes to on one board.
 *
 * @param board board id, such as {@code pi4}
 * @param effective every tuning key that a line gives a value, or may, in the vocabulary's order
 * @param cpuPower empty where neither the CPU's clock nor its voltage is tuned
 */
public record BoardView(String board, List<EffectiveView> effective, Optional<PowerView> cpuPower) {

    public BoardView {
        effective = List.copyOf(effective);
    }
}
