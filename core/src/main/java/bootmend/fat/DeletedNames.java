package bootmend.fat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Gathers what is left of long names in front of deleted entries. The byte that numbered their slots is gone, and so is the
 * first character of the short name that their checksum is of: slots that stand side by side with one checksum are a name.
 */
final class DeletedNames {

    private final List<Slot> slots = new ArrayList<>();

    /** Takes the next deleted slot; returns the entry that it ends, where it is one. */
    Optional<DeletedEntry> add(Slot slot, FatType type) {
        if (slot.isLongName()) {
            if (!slots.isEmpty()
                    && slots.get(0).u8(LongNameCollector.CHECKSUM) != slot.u8(LongNameCollector.CHECKSUM)) {
                slots.clear();
            }
            slots.add(slot);
            return Optional.empty();
        }
        Optional<String> longName = slots.size() <= LongNameCollector.MAX_SLOTS && fits(slot)
                ? LongNameCollector.name(slots)
                : Optional.empty();
        slots.clear();
        if (slot.isLabel()) {
            return Optional.empty();
        }
        return Optional.of(new DeletedEntry(
                longName.orElseGet(() -> slot.shortName().displayDeleted()),
                (slot.attributes() & Slot.ATTRIBUTE_FOLDER) != 0,
                slot.firstCluster(type),
                slot.size(),
                slot.offset(),
                slot.written()));
    }

    /** Whether the checksum is that of the short name with some first character. */
    private boolean fits(Slot slot) {
        if (slots.isEmpty()) {
            return false;
        }
        int wanted = slots.get(0).u8(LongNameCollector.CHECKSUM);
        for (int first = ' ' + 1; first <= 0xFF; first++) {
            if (slot.shortName().withFirst((byte) first).checksum() == wanted) {
                return true;
            }
        }
        return false;
    }

    /** A slot that is in use stands between. */
    void drop() {
        slots.clear();
    }
}
