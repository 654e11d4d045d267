package bootmend.change;

import bootmend.fat.SectorChange;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.LongStream;

/**
 * How far a plan has come on a card, by what its sectors hold now.
 *
 * <p>A sector's versions are its content before the first step that changes it and after each. A sector that holds none
 * of them but at every byte one of theirs was torn in the middle of a write; the plan can still finish it or take it
 * back. Any other content came from somewhere else.
 */
final class Progress {

    private static final int TORN = -1;
    private static final int FOREIGN = -2;

    private final Map<Long, List<byte[]>> versions;
    private final Map<Long, Integer> now = new TreeMap<>();
    /** Sectors that do not hold what they held before, whatever they hold. */
    private final Set<Long> touched = new TreeSet<>();

    private Progress(Map<Long, List<byte[]>> versions) {
        this.versions = versions;
    }

    static Progress of(Plan plan, BlockDevice card) throws IOException {
        Progress progress = new Progress(versions(plan));
        for (Map.Entry<Long, List<byte[]>> sector : progress.versions.entrySet()) {
            byte[] content = read(card, sector.getKey(), sector.getValue().get(0).length);
            progress.now.put(sector.getKey(), versionOf(content, sector.getValue()));
            if (!Arrays.equals(content, sector.getValue().get(0))) {
                progress.touched.add(sector.getKey());
            }
        }
        return progress;
    }

    OpenChange.Extent extent() {
        if (now.containsValue(FOREIGN)) {
            return OpenChange.Extent.FOREIGN;
        }
        boolean all = now.entrySet().stream()
                .allMatch(e -> e.getValue() == versions.get(e.getKey()).size() - 1);
        if (touched.isEmpty()) {
            return OpenChange.Extent.NOTHING;
        }
        return all ? OpenChange.Extent.ALL : OpenChange.Extent.PART;
    }

    /** Places of the sectors that hold, or were torn while they got, what the change wrote. */
    LongStream begun() {
        return touched.stream().filter(place -> now.get(place) != FOREIGN).mapToLong(Long::longValue);
    }

    /** Places of the sectors that hold what the change never wrote. */
    List<Long> foreignSectors() {
        return now.entrySet().stream()
                .filter(e -> e.getValue() == FOREIGN)
                .map(Map.Entry::getKey)
                .toList();
    }

    /** Whether the commit step's sectors hold their new content, so that finishing is the shorter way. */
    boolean isCommitted(Plan plan) {
        return plan.steps().stream()
                .filter(step -> step.kind() == PlanStep.Kind.COMMIT)
                .flatMap(step -> step.changes().stream())
                .allMatch(change -> now.get(change.offset()) > 0);
    }

    /** The writes that are left of each step of {@code plan} to finish it, leaving alone what is done already. */
    List<List<SectorChange>> leftToFinish(Plan plan) {
        List<List<SectorChange>> left = new ArrayList<>();
        Map<Long, Integer> reached = new TreeMap<>();
        for (PlanStep step : plan.steps()) {
            List<SectorChange> writes = new ArrayList<>();
            for (SectorChange change : step.changes()) {
                int version = reached.merge(change.offset(), 1, Integer::sum);
                if (now.get(change.offset()) < version) {
                    writes.add(change);
                }
            }
            left.add(writes);
        }
        return left;
    }

    private static Map<Long, List<byte[]>> versions(Plan plan) {
        Map<Long, List<byte[]>> versions = new TreeMap<>();
        for (PlanStep step : plan.steps()) {
            for (SectorChange change : step.changes()) {
                versions.computeIfAbsent(change.offset(), offset -> new ArrayList<>(List.of(change.before())))
                        .add(change.after());
            }
        }
        return versions;
    }

    /** The last of equal versions, so that a change back and forth counts as done. */
    private static int versionOf(byte[] content, List<byte[]> versions) {
        for (int i = versions.size() - 1; i >= 0; i--) {
            if (Arrays.equals(content, versions.get(i))) {
                return i;
            }
        }
        for (int at = 0; at < content.length; at++) {
            int index = at;
            if (versions.stream().noneMatch(version -> version[index] == content[index])) {
                return FOREIGN;
            }
        }
        return TORN;
    }

    private static byte[] read(BlockDevice card, long offset, int length) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(length);
        card.read(offset, buffer);
        return buffer.array();
    }
}
