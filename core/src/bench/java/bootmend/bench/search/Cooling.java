package bootmend.bench.search;

import java.util.Random;

/**
 * How a drawn board is cooled. No source.
 *
 * @param riseAtStock steady rise over ambient at stock under full load, in degC
 * @param minutes after which two thirds of a rise have come
 */
record Cooling(String words, double riseAtStock, double minutes) {

    static Cooling fan(Random random) {
        return new Cooling("fan", 20 + 8 * random.nextDouble(), 1 + random.nextDouble());
    }

    static Cooling plain(Random random) {
        return new Cooling("heat sink", 30 + 10 * random.nextDouble(), 2 + 1.2 * random.nextDouble());
    }
}
