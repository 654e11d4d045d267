package bootmend.boot;

import bootmend.fat.BootFiles;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A card whose few bytes outside the boot partition's files are read once, however many boards ask for them. */
final class RememberedCard implements BootCard {

    private final BootCard card;
    private final Map<List<Long>, Optional<byte[]>> kept = new HashMap<>();

    RememberedCard(BootCard card) {
        this.card = card;
    }

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
    public BootFiles files() {
        return card.files();
    }

    @Override
    public Optional<BootFiles> files(int partition) throws IOException {
        return card.files(partition);
    }

    @Override
    public Optional<byte[]> bytes(CardPartition partition, long offset, int length) throws IOException {
        List<Long> key = List.of(partition.start(), offset, (long) length);
        Optional<byte[]> bytes = kept.get(key);
        if (bytes == null) {
            bytes = card.bytes(partition, offset, length);
            kept.put(key, bytes);
        }
        return bytes.map(byte[]::clone);
    }
}
