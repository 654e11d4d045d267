package bootmend.partition;

import bootmend.device.OutsideDeviceException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The logical partitions of an extended partition: a chain of tables, each with one partition and the place of the next.
 *
 * <p>A partition's place counts from its own table, the next table's from the extended partition's start. Source: the page
 * sfdisk(8) and the kernel's block/partitions/msdos.c, "parse_extended"; a bound on the chain's length is the kernel's too.
 */
final class ExtendedChain {

    /** No source for the number: more than any tool makes. */
    private static final int MOST = 128;

    /** Reads a sector that begins at byte {@code offset}. */
    @FunctionalInterface
    interface Sectors {
        ByteBuffer at(long offset) throws IOException;
    }

    private final Sectors sectors;
    private final long size;
    private final int unit;
    private final List<String> warnings;
    private final List<MbrSlot> found = new ArrayList<>();

    /**
     * @param size bytes of the card
     * @param unit bytes of the sectors that the tables count in
     * @param warnings takes a sentence on all that is wrong
     */
    ExtendedChain(Sectors sectors, long size, int unit, List<String> warnings) {
        this.sectors = sectors;
        this.size = size;
        this.unit = unit;
        this.warnings = warnings;
    }

    /** The logical partitions in the chain's order, counted from {@code number} on, with places on the card. */
    List<MbrSlot> walk(MbrSlot extended, int number) throws IOException {
        long start = extended.firstSector();
        long end = start + extended.sectors();
        long table = start;
        Set<Long> seen = new HashSet<>();
        while (true) {
            if (!seen.add(table)) {
                warnings.add("the chain of logical partitions leads back to itself; it was followed once");
                return found;
            }
            if (seen.size() > MOST) {
                warnings.add("the chain of logical partitions has over " + MOST + " tables; the rest was not followed");
                return found;
            }
            ByteBuffer sector = table(table);
            if (sector == null) {
                return found;
            }
            MbrSlot next = null;
            for (MbrSlot slot : MbrSlot.readAll(sector)) {
                if (slot.isExtended() && slot.sectors() > 0) {
                    next = next == null ? slot : next;
                } else if (!slot.isEmpty()) {
                    add(slot, table, end, number + found.size());
                }
            }
            if (next == null) {
                return found;
            }
            table = start + next.firstSector();
            if (table >= end) {
                warnings.add(
                        "the chain of logical partitions leads out of the extended partition; it was followed no further");
                return found;
            }
        }
    }

    private ByteBuffer table(long place) throws IOException {
        if (place >= size / unit) {
            warnings.add("the chain of logical partitions leads past the end of the card");
            return null;
        }
        try {
            ByteBuffer sector = sectors.at(place * unit);
            if (VolumeStart.hasSignature(sector)) {
                return sector;
            }
            warnings.add("the table of logical partitions at sector " + place + " has no valid signature");
        } catch (OutsideDeviceException e) {
            warnings.add("the chain of logical partitions leads past the end of the card");
        }
        return null;
    }

    private void add(MbrSlot slot, long table, long end, int number) {
        MbrSlot logical = slot.at(number, table + slot.firstSector());
        if (logical.firstSector() + logical.sectors() > end) {
            warnings.add("logical partition " + number + " reaches out of the extended partition");
        }
        for (MbrSlot other : found) {
            if (logical.firstSector() < other.firstSector() + other.sectors()
                    && other.firstSector() < logical.firstSector() + logical.sectors()) {
                warnings.add("logical partitions " + other.number() + " and " + number + " overlap");
            }
        }
        found.add(logical);
    }
}
