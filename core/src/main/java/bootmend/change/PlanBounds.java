package bootmend.change;

import bootmend.CardException;
import bootmend.fat.SectorChange;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** How large a plan may be, whatever it does; a record that claims more was not written by this program. */
final class PlanBounds {

    /** Bytes of all sectors and files of a plan, before and after. No source: more than a FAT of the largest card. */
    static final long MOST_BYTES = 320L << 20;

    /** A boot file's bytes; the largest that boards take have some thirty million. No source: a bound. */
    static final int MOST_FILE_BYTES = 48 << 20;

    private static final int MOST_STEPS = 10_000;
    private static final int MOST_FILES = 1_000;
    private static final int MOST_TITLE = 200;
    private static final int SMALLEST_SECTOR = 512;
    private static final int LARGEST_SECTOR = 4096;

    private PlanBounds() {}

    static void check(Plan plan, String remedy) throws CardException {
        Optional<String> fault = fault(plan);
        if (fault.isPresent()) {
            throw CardException.refused("the plan " + fault.get(), remedy);
        }
    }

    private static Optional<String> fault(Plan plan) {
        if (plan.steps().size() > MOST_STEPS || plan.files().size() > MOST_FILES) {
            return Optional.of("has more steps or files than any change");
        }
        if (plan.title().length() > MOST_TITLE || plan.title().chars().anyMatch(Character::isISOControl)) {
            return Optional.of("has no title that could be shown");
        }
        if (plan.isOfFolder() != plan.steps().isEmpty() && !plan.isEmpty()) {
            return Optional.of("mixes sectors of a card with files of a folder");
        }
        return plan.steps().stream().anyMatch(step -> !isOf(step.kind(), plan))
                ? Optional.of("has a step that only a repair has")
                : sizes(plan).or(() -> order(plan));
    }

    private static boolean isOf(PlanStep.Kind kind, Plan plan) {
        return switch (kind) {
            case PREPARE, COMMIT, CLEAN_UP, IN_PLACE -> true;
            case REPAIR_BOOT_SECTOR, REPAIR_FAT, REPAIR_FILES, FREE_LOST, REPAIR_FS_INFO, RENAME, MARK_CLEAN ->
                plan.isRepair();
        };
    }

    private static Optional<String> sizes(Plan plan) {
        long bytes = 0;
        for (PlanStep step : plan.steps()) {
            for (SectorChange change : step.changes()) {
                int length = change.after().length;
                if (length < SMALLEST_SECTOR || length > LARGEST_SECTOR || Integer.bitCount(length) != 1) {
                    return Optional.of("has a sector of " + length + " bytes, which no card has");
                }
                bytes += 2L * length;
            }
        }
        for (FileChange file : plan.files()) {
            if (length(file.before()) > MOST_FILE_BYTES || length(file.after()) > MOST_FILE_BYTES) {
                return Optional.of("has a file larger than any boot file");
            }
            bytes += length(file.before()) + length(file.after());
        }
        return bytes > MOST_BYTES ? Optional.of("is larger than any change of a card") : Optional.empty();
    }

    /** Where two steps write one sector, the second must begin where the first ended. */
    private static Optional<String> order(Plan plan) {
        Map<Long, byte[]> reached = new HashMap<>();
        for (PlanStep step : plan.steps()) {
            for (SectorChange change : step.changes()) {
                byte[] before = reached.put(change.offset(), change.after());
                if (before != null && !Arrays.equals(before, change.before())) {
                    return Optional.of("does not fit together at byte " + change.offset());
                }
            }
        }
        return Optional.empty();
    }

    /** Whether every sector that it names can be read on a card of that size. */
    static boolean isWithin(Plan plan, long cardBytes) {
        return fault(plan).isEmpty()
                && plan.steps().stream()
                        .flatMap(step -> step.changes().stream())
                        .allMatch(
                                change -> change.offset() >= 0 && change.offset() <= cardBytes - change.after().length);
    }

    private static int length(byte[] bytes) {
        return bytes == null ? 0 : bytes.length;
    }
}
