package bootmend.fat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * The FAT copies in use in the order in which they are asked, and why that is not the usual one.
 *
 * @param order numbers from 0
 * @param head the first entries of the copy that is asked first
 * @param warnings sentences, empty where the first copy begins as it should
 */
record FatCopies(List<Integer> order, FatHead head, List<String> warnings) {

    FatCopies {
        order = List.copyOf(order);
        warnings = List.copyOf(warnings);
    }

    /**
     * Puts a copy whose first entries are right in front; later copies are looked at only where the first fails.
     *
     * @param media byte 21 of the boot sector
     */
    static FatCopies choose(VolumeBytes bytes, Geometry geometry, int media) throws IOException {
        List<Integer> order = new ArrayList<>(geometry.fatsInUse());
        int usual = order.get(0);
        FatHead first = head(bytes, geometry, usual, media);
        if (first.marked()) {
            return new FatCopies(order, first, List.of());
        }
        for (int copy : geometry.fatsInUse().subList(1, order.size())) {
            FatHead head = head(bytes, geometry, copy, media);
            if (head.marked()) {
                order.remove(Integer.valueOf(copy));
                order.add(0, copy);
                return new FatCopies(
                        order,
                        head,
                        List.of("FAT copy " + (usual + 1) + " does not begin with the marks "
                                + "that belong there, copy " + (copy + 1) + " does; copy " + (copy + 1)
                                + " is read first"));
            }
        }
        return new FatCopies(order, first, List.of("no FAT copy begins with the marks that belong there"));
    }

    private static FatHead head(VolumeBytes bytes, Geometry geometry, int copy, int media) throws IOException {
        return FatHead.read(new FatTable(bytes, geometry, copy), geometry.type(), media);
    }
}
