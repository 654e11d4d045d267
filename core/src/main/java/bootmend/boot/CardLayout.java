package bootmend.boot;

import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * Where a card says that its partitions lie.
 *
 * @param kind what kind of table it has
 * @param diskId its id: eight hexadecimal digits of an MBR, or a GPT's GUID; in lower case
 * @param partitions in the table's order
 * @param hasMore whether there are partitions in an extended one that are not among these
 * @param bytes where the card ends; empty where nobody knows yet, as with some packed images
 * @param warnings clauses on what in the table was damaged
 */
public record CardLayout(
        Kind kind,
        Optional<String> diskId,
        List<CardPartition> partitions,
        boolean hasMore,
        OptionalLong bytes,
        List<String> warnings) {

    /** What kind of table. */
    public enum Kind {
        MBR,
        GPT,
        /** One volume and no table. */
        NONE,
        /** No table that leads to a volume: what is there was come upon by search, which no board does. */
        LOST,
        /** Not seen: the boot partition is a folder that the system has mounted. */
        UNSEEN
    }

    public CardLayout {
        partitions = List.copyOf(partitions);
        warnings = List.copyOf(warnings);
    }

    /** Of a mounted folder, which shows nothing of the card. */
    public static CardLayout unseen() {
        return new CardLayout(Kind.UNSEEN, Optional.empty(), List.of(), false, OptionalLong.empty(), List.of());
    }

    Optional<CardPartition> number(int number) {
        return partitions.stream().filter(each -> each.number() == number).findFirst();
    }
}
