package bootmend.change;

import bootmend.fat.SectorChange;
import bootmend.fat.SectorKind;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * The slots of folders by which a change switched files over: each holds, with the file's place and size, the time of the
 * change to two seconds.
 *
 * <p>Source: "FAT: General Overview of On-Disk Format", version 1.03, "FAT 32 Byte Directory Entry Structure".
 */
final class FolderSlots {

    private static final int SLOT = 32;
    /** A system that reads a file may note the day in its slot. */
    private static final int ACCESS_DATE = 18;

    private static final int ACCESS_DATE_END = 20;

    private final Set<Long> places;
    private final Map<Long, byte[]> before;
    private final Map<Long, byte[]> after;

    private FolderSlots(Set<Long> places, Map<Long, byte[]> before, Map<Long, byte[]> after) {
        this.places = places;
        this.before = before;
        this.after = after;
    }

    static FolderSlots of(Plan plan) {
        Set<Long> places = new TreeSet<>();
        for (PlanStep step : plan.steps()) {
            if (step.kind() == PlanStep.Kind.COMMIT) {
                step.changes().stream()
                        .filter(change -> change.kind() == SectorKind.DIRECTORY)
                        .map(SectorChange::offset)
                        .forEach(places::add);
            }
        }
        return new FolderSlots(places, plan.contentBefore(), plan.contentAfter());
    }

    boolean isEmpty() {
        return places.isEmpty();
    }

    /** First byte of each sector that holds one. */
    Set<Long> places() {
        return places;
    }

    /** Whether each slot that was changed is as the change left it. */
    boolean stand(BlockDevice card) throws IOException {
        for (long place : places) {
            byte[] old = before.get(place);
            byte[] changed = after.get(place);
            ByteBuffer now = ByteBuffer.allocate(changed.length);
            card.read(place, now);
            for (int slot = 0; slot < changed.length; slot += SLOT) {
                if (!isSame(old, changed, slot) && !isSame(now.array(), changed, slot)) {
                    return false;
                }
            }
        }
        return true;
    }

    private static boolean isSame(byte[] a, byte[] b, int slot) {
        for (int i = 0; i < SLOT; i++) {
            if ((i < ACCESS_DATE || i >= ACCESS_DATE_END) && a[slot + i] != b[slot + i]) {
                return false;
            }
        }
        return true;
    }
}
