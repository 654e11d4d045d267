package bootmend.fat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * Where a folder has room for new slots side by side in one sector, so that one write makes them count.
 *
 * @param first the first of them; empty where the folder must get another cluster, whose first slots they then are
 * @param padding slots from the end mark to its sector's end that are to be marked deleted, so that the folder reaches to
 *     {@code first}
 * @param clear places past the end mark that must be made empty before anything there counts: whole sectors
 * @param endMark the slot behind them that is to be the end mark; empty where that is one already, or the folder's end
 */
record SlotPlace(OptionalLong first, List<Long> padding, List<Long> clear, OptionalLong endMark) {

    SlotPlace {
        padding = List.copyOf(padding);
        clear = List.copyOf(clear);
    }

    /**
     * Looks through a folder.
     *
     * @param sectors its sectors, in the folder's order
     * @param count how many slots, at most those of one sector
     */
    static SlotPlace find(VolumeBytes volume, Geometry geometry, List<Long> sectors, int count) throws IOException {
        int unit = geometry.bytesPerSector();
        int slots = unit / Geometry.SLOT_BYTES;
        for (int s = 0; s < sectors.size(); s++) {
            byte[] sector = volume.read(sectors.get(s), unit);
            int deleted = 0;
            for (int slot = 0; slot < slots; slot++) {
                byte mark = sector[slot * Geometry.SLOT_BYTES];
                if (mark == 0) {
                    return atEnd(geometry, sectors, s, slot, count);
                }
                deleted = mark == Slot.DELETED ? deleted + 1 : 0;
                if (deleted == count) {
                    long first = sectors.get(s) + (long) (slot - count + 1) * Geometry.SLOT_BYTES;
                    return new SlotPlace(OptionalLong.of(first), List.of(), List.of(), OptionalLong.empty());
                }
            }
        }
        return new SlotPlace(OptionalLong.empty(), List.of(), List.of(), OptionalLong.empty());
    }

    private static SlotPlace atEnd(Geometry geometry, List<Long> sectors, int sector, int slot, int count) {
        int slots = geometry.bytesPerSector() / Geometry.SLOT_BYTES;
        if (slot + count <= slots) {
            return at(geometry, sectors, sector, slot, count, List.of(), List.of());
        }
        List<Long> padding = new ArrayList<>();
        for (int each = slot; each < slots; each++) {
            padding.add(sectors.get(sector) + (long) each * Geometry.SLOT_BYTES);
        }
        return sector + 1 < sectors.size()
                ? at(geometry, sectors, sector + 1, 0, count, padding, List.of(sectors.get(sector + 1)))
                : new SlotPlace(OptionalLong.empty(), padding, List.of(), OptionalLong.empty());
    }

    private static SlotPlace at(
            Geometry geometry,
            List<Long> sectors,
            int sector,
            int slot,
            int count,
            List<Long> padding,
            List<Long> fresh) {
        long first = sectors.get(sector) + (long) slot * Geometry.SLOT_BYTES;
        List<Long> clear = new ArrayList<>(fresh);
        boolean fillsSector = (slot + count) * Geometry.SLOT_BYTES == geometry.bytesPerSector();
        OptionalLong endMark = OptionalLong.empty();
        if (!fillsSector) {
            endMark = OptionalLong.of(first + (long) count * Geometry.SLOT_BYTES);
        } else if (sector + 1 < sectors.size()) {
            clear.add(sectors.get(sector + 1));
        }
        return new SlotPlace(OptionalLong.of(first), padding, clear, endMark);
    }
}
