package bootmend.view;

import java.util.List;

/**
 * Dynamic power of the CPU against stock, by the CMOS power law C V^2 f.
 *
 * @param ratios 1 is as stock; one for each value that stock may have; empty where it cannot be told
 * @param unknown what is missing, as a phrase; empty where there are ratios
 * @param source where the law is published
 */
public record PowerView(List<Double> ratios, String unknown, String source) {

    public PowerView {
        ratios = List.copyOf(ratios);
    }
}
