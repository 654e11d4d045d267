package bootmend.view;

import bootmend.CardException;
import bootmend.card.PartitionView;
import java.util.List;
import java.util.Optional;

/**
 * What is on a card, as a user is shown it.
 *
 * @param card the path it was opened at
 * @param kind what the card is to this computer
 * @param bytes its size
 * @param config the config file, where it could be read
 * @param configProblem why it could not be
 * @param tuning every line with a tuning key, in the files' order
 * @param notes sentences on what was damaged or is worth knowing
 */
public record CardView(
        String card,
        String kind,
        long bytes,
        PartitionView partition,
        Optional<ConfigView> config,
        Optional<CardException> configProblem,
        List<TuningView> tuning,
        List<String> notes) {

    public CardView {
        tuning = List.copyOf(tuning);
        notes = List.copyOf(notes);
    }

    /** Whether no line that resets is active. */
    public boolean isStock() {
        return tuning.stream().noneMatch(line -> line.active() && line.resets());
    }

    /** The same with other views of its tuning lines. */
    CardView withTuning(List<TuningView> other) {
        return new CardView(card, kind, bytes, partition, config, configProblem, other, notes);
    }
}
