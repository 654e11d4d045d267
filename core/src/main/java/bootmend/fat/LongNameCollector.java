package bootmend.fat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Gathers the slots of a long name, which stand before their entry in reverse order.
 *
 * <p>Source: "FAT: General Overview of On-Disk Format", version 1.03, "FAT Long Directory Entries".
 */
final class LongNameCollector {

    private static final int LAST = 0x40;
    private static final int ORDER_MASK = 0x3F;
    /** 255 characters of 13 each. */
    static final int MAX_SLOTS = 20;
    /** Place of the checksum in a slot. */
    static final int CHECKSUM = 13;

    private static final int[] CHARACTER_OFFSETS = {1, 3, 5, 7, 9, 14, 16, 18, 20, 22, 24, 28, 30};

    private final List<Slot> slots = new ArrayList<>();
    private int expected;
    private int checksum;

    /** Takes the next long-name slot; returns the slots that it shows to be orphans. */
    List<Slot> add(Slot slot) {
        int order = slot.u8(0);
        int number = order & ORDER_MASK;
        List<Slot> orphans = List.of();
        if ((order & LAST) != 0) {
            orphans = drop();
            if (number >= 1 && number <= MAX_SLOTS) {
                slots.add(slot);
                expected = number - 1;
                checksum = slot.u8(CHECKSUM);
                return orphans;
            }
            return join(orphans, slot);
        }
        if (slots.isEmpty() || number != expected || slot.u8(CHECKSUM) != checksum || number == 0) {
            return join(drop(), slot);
        }
        slots.add(slot);
        expected--;
        return orphans;
    }

    /** Forgets the slots gathered so far and returns them. */
    List<Slot> drop() {
        List<Slot> dropped = List.copyOf(slots);
        slots.clear();
        return dropped;
    }

    /** Whether the slots gathered so far are the whole long name of {@code shortName}. */
    boolean belongsTo(ShortName shortName) {
        return !slots.isEmpty() && expected == 0 && checksum == shortName.checksum();
    }

    /** The places of the slots gathered so far, in the order they stand in the folder. */
    List<Long> offsets() {
        return slots.stream().map(Slot::offset).toList();
    }

    Optional<String> name() {
        return name(slots);
    }

    /** The name in these slots, which stand in reverse order. */
    static Optional<String> name(List<Slot> slots) {
        StringBuilder name = new StringBuilder();
        for (int i = slots.size() - 1; i >= 0; i--) {
            for (int at : CHARACTER_OFFSETS) {
                char c = slots.get(i).bytes().getChar(at);
                if (c == 0) {
                    return Optional.of(name.toString());
                }
                name.append(c);
            }
        }
        return Optional.of(name.toString());
    }

    private static List<Slot> join(List<Slot> slots, Slot last) {
        List<Slot> all = new ArrayList<>(slots);
        all.add(last);
        return all;
    }
}
