package bootmend.partition;

import java.util.List;
import java.util.Optional;

/**
 * The partitions of a card, in the order of their table slots.
 *
 * @param doubts sentences on what in the table was damaged or unlikely, and what was read in its place
 */
public record PartitionTable(Kind kind, List<Partition> partitions, List<String> doubts) {

    /** How the card says where its partitions lie. */
    public enum Kind {
        MBR("MBR"),
        GPT("GPT"),
        NONE("none");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    public PartitionTable {
        partitions = List.copyOf(partitions);
        doubts = List.copyOf(doubts);
    }

    public Optional<Partition> number(int number) {
        return partitions.stream().filter(p -> p.number() == number).findFirst();
    }

    /** A card without a table: one volume from sector 0. */
    static PartitionTable none(long size, int sectorSize, List<String> doubts) {
        Partition whole = new Partition(0, 0, size / sectorSize, sectorSize, "none", true);
        return new PartitionTable(Kind.NONE, List.of(whole), doubts);
    }
}
