package bootmend.request;

import bootmend.partition.PartitionSelection;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * Which card, and which partition of it where the choice is not left to bootmend.
 *
 * @param partition counts from 1
 * @param offset byte at which the partition begins, whatever a table says; comes before {@code partition}
 * @param text a config file's bytes in place of a card, which {@code card} then only names
 */
public record CardRequest(Path card, OptionalInt partition, OptionalLong offset, Optional<GivenText> text) {

    public CardRequest(Path card, OptionalInt partition) {
        this(card, partition, OptionalLong.empty(), Optional.empty());
    }

    public static CardRequest of(Path card) {
        return new CardRequest(card, OptionalInt.empty());
    }

    /** The same, of a config file that is handed over. */
    public CardRequest given(GivenText handed) {
        return new CardRequest(card, partition, offset, Optional.of(handed));
    }

    /** The partition that is meant. */
    public PartitionSelection selection() {
        if (offset.isPresent()) {
            return new PartitionSelection.AtOffset(offset.getAsLong());
        }
        return partition.isPresent()
                ? new PartitionSelection.ByNumber(partition.getAsInt())
                : new PartitionSelection.Automatic();
    }
}
