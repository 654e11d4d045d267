package bootmend.boot;

import bootmend.fat.BootFiles;
import java.io.IOException;
import java.util.Optional;

/** A card as it would be with other files on its boot partition. */
record PatchedCard(BootCard card, BootFiles files) implements BootCard {

    @Override
    public CardLayout layout() throws IOException {
        return card.layout();
    }

    @Override
    public int bootPartition() {
        return card.bootPartition();
    }

    @Override
    public String choice() {
        return card.choice();
    }

    @Override
    public Optional<BootFiles> files(int partition) throws IOException {
        return partition == bootPartition() ? Optional.of(files) : card.files(partition);
    }

    @Override
    public Optional<byte[]> bytes(CardPartition partition, long offset, int length) throws IOException {
        return card.bytes(partition, offset, length);
    }
}
