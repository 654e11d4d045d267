package bootmend.boot;

import bootmend.fat.BootFiles;
import java.util.Optional;

/**
 * A boot partition as files alone, as the system shows one that it has mounted; the rest of the card is not seen.
 *
 * @param choice why this one, in a clause
 */
public record FilesCard(BootFiles files, String choice) implements BootCard {

    /** A mounted one. */
    public FilesCard(BootFiles files) {
        this(files, "the system has mounted it");
    }

    @Override
    public CardLayout layout() {
        return CardLayout.unseen();
    }

    @Override
    public int bootPartition() {
        return 0;
    }

    @Override
    public Optional<BootFiles> files(int partition) {
        return partition == 0 ? Optional.of(files) : Optional.empty();
    }

    @Override
    public Optional<byte[]> bytes(CardPartition partition, long offset, int length) {
        return Optional.empty();
    }
}
