package bootmend.partition;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;

/**
 * The partitions of a card, in the order of their table slots, logical ones after the others.
 *
 * @param partitions those that begin on the card
 * @param beyond those that the table names past the card's end
 * @param diskSignature the MBR's 32 bits that name the card, from byte 440 on; empty where there is no MBR
 * @param diskGuid the GPT's GUID of the card
 * @param hybrid whether an MBR beside a GPT names partitions too
 * @param warnings sentences on what in the table was damaged or unlikely, and what was read in its place
 */
public record PartitionTable(
        Kind kind,
        List<Partition> partitions,
        List<Partition> beyond,
        OptionalLong diskSignature,
        Optional<UUID> diskGuid,
        boolean hybrid,
        List<String> warnings) {

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
        beyond = List.copyOf(beyond);
        warnings = List.copyOf(warnings);
    }

    /** One of which nothing more is known. */
    public PartitionTable(Kind kind, List<Partition> partitions, List<String> warnings) {
        this(kind, partitions, List.of(), OptionalLong.empty(), Optional.empty(), false, warnings);
    }

    public Optional<Partition> number(int number) {
        return partitions.stream().filter(p -> p.number() == number).findFirst();
    }

    /** Whether all its partitions were come upon by search, because no table leads to one. */
    public boolean isSearched() {
        return !partitions.isEmpty() && partitions.stream().allMatch(each -> each.origin() == Partition.Origin.SEARCH);
    }

    /** A card without a table: one volume from sector 0. */
    static PartitionTable none(long size, int sectorSize, List<String> warnings) {
        Partition whole = new Partition(0, 0, size / sectorSize, sectorSize, "none", true);
        return new PartitionTable(Kind.NONE, List.of(whole), warnings);
    }
}
