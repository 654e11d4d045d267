package bootmend.boot;

import bootmend.fat.BootFiles;
import bootmend.tuning.Board;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * Whether the board finds the boot partition.
 *
 * <p>Sources: bootflow-legacy.adoc, commit 27d24616; boot sector fields: "FAT: General Overview of On-Disk Format",
 * version 1.03; that pi3 did not start from type 0xEF: a report, firmware repository issue 1711, 2022.
 */
final class PartitionCheck {

    private static final int SECTOR = 512;
    private static final String EFI = "0xef";

    private final BootCard card;
    private final BootFiles files;
    private final int number;

    PartitionCheck(BootCard card, BootFiles files, int number) {
        this.card = card;
        this.files = files;
        this.number = number;
    }

    ChainPart on(Board board) throws IOException {
        CardLayout layout = card.layout();
        if (layout.kind() == CardLayout.Kind.UNSEEN) {
            return ChainPart.whole(Found.words("mounted folder", "the system has mounted it; partitions are not seen"));
        }
        Optional<CardPartition> partition = layout.number(number);
        List<ChainPart> parts = new ArrayList<>();
        parts.add(ChainPart.whole(new Found(
                number == 0 ? "whole card" : "partition " + number,
                OptionalInt.empty(),
                partition.isPresent() ? OptionalLong.of(partition.get().length()) : OptionalLong.empty(),
                LinkState.WHOLE,
                number == card.bootPartition() ? card.choice() : "autoboot.txt names it for a try-once start")));
        layout.warnings().forEach(warning -> parts.add(ChainPart.whole(Found.words("partition table", warning))));
        files.warnings().forEach(warning -> parts.add(ChainPart.whole(Found.words("volume", warning))));
        if (partition.isPresent()) {
            Optional<byte[]> sector = card.bytes(partition.get(), 0, SECTOR);
            if (sector.isEmpty() || !isBootSector(sector.get())) {
                parts.add(ChainPart.stops(
                        LinkState.DAMAGED,
                        new Cause(
                                LinkKind.PARTITION,
                                "The boot partition's first sector is damaged; its backup was read here, which a board does"
                                        + " not look for.",
                                Origin.CUT_WRITE,
                                new Remedy.RepairCard()),
                        Found.words("volume", "no boot sector at its start")));
            }
            if (partition.get().type().toLowerCase(Locale.ROOT).equals(EFI)
                    && board.chip().equals("BCM2837")) {
                parts.add(ChainPart.unknown(
                        "the boot partition is of type 0xEF, from which one such board is reported not to" + " start"));
            }
        }
        if (layout.kind() == CardLayout.Kind.LOST) {
            parts.add(ChainPart.stops(
                    LinkState.MISSING,
                    new Cause(
                            LinkKind.PARTITION,
                            "No partition table leads to the boot partition; it was found here by search, and no board"
                                    + " searches.",
                            Origin.CUT_WRITE,
                            new Remedy.WriteAnew()),
                    Found.words("partition table", "leads to no volume")));
        }
        if (layout.kind() == CardLayout.Kind.MBR || layout.kind() == CardLayout.Kind.GPT) {
            Optional<byte[]> first = card.bytes(whole(layout), 0, SECTOR);
            if (first.isEmpty() || !isSigned(first.get())) {
                parts.add(ChainPart.stops(
                        LinkState.DAMAGED,
                        new Cause(
                                LinkKind.PARTITION,
                                "The card's first sector is damaged: a board finds no partition table in it.",
                                Origin.CUT_WRITE,
                                new Remedy.WriteAnew()),
                        Found.words("partition table", "no signature in the first sector")));
            }
        }
        return ChainPart.all(parts);
    }

    private static CardPartition whole(CardLayout layout) {
        return new CardPartition(0, "card", 0, layout.bytes().orElse(SECTOR), Optional.empty(), Optional.empty());
    }

    private static boolean isSigned(byte[] sector) {
        return (sector[510] & 0xFF) == 0x55 && (sector[511] & 0xFF) == 0xAA;
    }

    private static boolean isBootSector(byte[] sector) {
        ByteBuffer bytes = ByteBuffer.wrap(sector).order(ByteOrder.LITTLE_ENDIAN);
        int perSector = bytes.getShort(11) & 0xFFFF;
        return isSigned(sector)
                && perSector >= SECTOR
                && Integer.bitCount(perSector) == 1
                && Integer.bitCount(sector[13] & 0xFF) == 1
                && bytes.getShort(14) != 0
                && sector[16] != 0;
    }
}
