package bootmend.boot;

import bootmend.CardException;
import bootmend.partition.Partition;
import bootmend.partition.PartitionTable;
import bootmend.partition.PartitionTableReader;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;

/**
 * A card on which no boot partition is found, or whose boot partition cannot be opened.
 *
 * @param why a clause on what was found instead, safe to show
 */
public record NoBootPartition(LinkState state, String why, Origin origin, Remedy remedy) {

    /**
     * Tells which it is from the card's partition table.
     *
     * @param why why the card could not be opened, in a clause
     * @throws IOException where the card itself cannot be read
     */
    public static NoBootPartition on(BlockDevice card, String why) throws IOException {
        List<Partition> fat = fat(card);
        long end = card.getSize();
        boolean isCut = fat.stream().anyMatch(each -> each.start() + each.length() > end);
        if (isCut) {
            return new NoBootPartition(LinkState.DAMAGED, why, Origin.STOPPED_COPY, new Remedy.CopyAgain());
        }
        return fat.isEmpty()
                ? new NoBootPartition(LinkState.MISSING, why, Origin.NOT_KNOWN, new Remedy.WriteAnew())
                : new NoBootPartition(LinkState.DAMAGED, why, Origin.CUT_WRITE, new Remedy.WriteAnew());
    }

    private static List<Partition> fat(BlockDevice card) throws IOException {
        try {
            PartitionTable table = PartitionTableReader.read(card);
            return table.partitions().stream().filter(Partition::fatType).toList();
        } catch (CardException e) {
            return List.of();
        }
    }

    BootChain chain(String board) {
        Cause cause = new Cause(
                LinkKind.PARTITION, "No board finds a boot partition on this card: " + why + ".", origin, remedy);
        List<BootLink> links = Arrays.stream(LinkKind.values())
                .map(kind -> (kind == LinkKind.PARTITION
                                ? ChainPart.stops(state, cause, Found.words("partition table", why))
                                : ChainPart.unknown("it would be on the boot partition"))
                        .link(kind))
                .toList();
        return new BootChain(board, BootChain.Start.ORDINARY, links, new Verdict.Stops(cause));
    }
}
