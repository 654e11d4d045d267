package bootmend.change;

import bootmend.fat.SectorChange;
import bootmend.fat.SectorKind;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;

/**
 * The exact bytes a change would put where, worked out before anything is written; offsets count from the card's start.
 *
 * @param purpose what such a plan may touch
 * @param title what the change does, in a few words
 * @param files the files it changes, whole
 * @param steps in the order they are written; a sector may be changed by several
 * @param beside for a mounted folder, each file's path to the name of the new file that stands beside it for a moment
 */
public record Plan(
        CardId card,
        Purpose purpose,
        String title,
        List<FileChange> files,
        List<PlanStep> steps,
        Map<String, String> beside) {

    /** What a plan may touch on a card. */
    public enum Purpose {
        /** Files alone: data, FAT, folders and FSInfo of the boot partition. */
        CHANGE,
        /** Also the boot sector and its backup, each where the plan names it. */
        REPAIR,
        /** Files of a mounted folder, whole; the system decides which sectors that takes. */
        FOLDER
    }

    public Plan {
        Objects.requireNonNull(card);
        Objects.requireNonNull(purpose);
        Objects.requireNonNull(title);
        beside = beside == null ? Map.of() : Map.copyOf(beside);
        files = List.copyOf(files);
        steps = steps.stream().filter(step -> !step.changes().isEmpty()).toList();
    }

    /** Of a card's sectors. */
    static Plan ofSectors(CardId card, Purpose purpose, String title, List<FileChange> files, List<PlanStep> steps) {
        return new Plan(card, purpose, title, files, steps, Map.of());
    }

    public boolean isEmpty() {
        return isOfFolder() ? files.isEmpty() : steps.isEmpty();
    }

    /** Sector writes, a sector that two steps change counted twice. */
    public int sectorsWritten() {
        return steps.stream().mapToInt(step -> step.changes().size()).sum();
    }

    /** Sector writes by what the sectors are for. */
    public Map<SectorKind, Integer> sectorsByKind() {
        Map<SectorKind, Integer> counts = new EnumMap<>(SectorKind.class);
        steps.forEach(step -> step.changes().forEach(change -> counts.merge(change.kind(), 1, Integer::sum)));
        return counts;
    }

    /** Whether a cut in the middle can leave a file that only the undo record can repair. */
    public boolean isInPlace() {
        return steps.stream().anyMatch(step -> step.kind() == PlanStep.Kind.IN_PLACE);
    }

    /**
     * The same change backwards. A repair that is undone leads to a damaged card, on which a file need not read as it did
     * while the repair was worked out; so it names no files, and its sectors alone are compared.
     */
    Plan reversed(String newTitle) {
        List<PlanStep> back =
                new ArrayList<>(steps.stream().map(PlanStep::reversed).toList());
        Collections.reverse(back);
        List<FileChange> changed = isRepair()
                ? List.of()
                : files.stream().map(FileChange::reversed).toList();
        return new Plan(card, purpose, newTitle, changed, back, beside);
    }

    /** Whether it names files of a mounted folder instead of sectors. */
    public boolean isOfFolder() {
        return purpose == Purpose.FOLDER;
    }

    /** Whether the card may have another serial number while it is carried out. */
    boolean writesBootSector() {
        return sectorsByKind().containsKey(SectorKind.BOOT_SECTOR);
    }

    boolean isRepair() {
        return purpose == Purpose.REPAIR;
    }

    /** Every sector's content before the first step, by place. */
    Map<Long, byte[]> contentBefore() {
        Map<Long, byte[]> content = new TreeMap<>();
        steps.forEach(step -> step.changes().forEach(change -> content.putIfAbsent(change.offset(), change.before())));
        return content;
    }

    /** Every sector's content after the last step, by place. */
    public Map<Long, byte[]> contentAfter() {
        Map<Long, byte[]> content = new TreeMap<>();
        steps.forEach(step -> step.changes().forEach(change -> content.put(change.offset(), change.after())));
        return content;
    }

    /** Whether both write the same bytes to the same places in the same order. */
    public boolean writesTheSameAs(Plan other) {
        List<SectorChange> mine =
                steps.stream().flatMap(step -> step.changes().stream()).toList();
        List<SectorChange> theirs =
                other.steps.stream().flatMap(step -> step.changes().stream()).toList();
        boolean same = mine.size() == theirs.size()
                && card.equals(other.card)
                && sameFiles(other)
                && beside.equals(other.beside);
        for (int i = 0; same && i < mine.size(); i++) {
            SectorChange a = mine.get(i);
            SectorChange b = theirs.get(i);
            same = a.offset() == b.offset()
                    && Arrays.equals(a.before(), b.before())
                    && Arrays.equals(a.after(), b.after());
        }
        return same;
    }

    private boolean sameFiles(Plan other) {
        boolean same = files.size() == other.files.size();
        for (int i = 0; same && i < files.size(); i++) {
            FileChange a = files.get(i);
            FileChange b = other.files.get(i);
            same = a.path().equals(b.path())
                    && Arrays.equals(a.before(), b.before())
                    && Arrays.equals(a.after(), b.after());
        }
        return same;
    }

    /** Length of every sector that may be written, by place. */
    Map<Long, Integer> sectors() {
        Map<Long, Integer> sectors = new TreeMap<>();
        for (PlanStep step : steps) {
            for (SectorChange change : step.changes()) {
                sectors.put(change.offset(), change.after().length);
            }
        }
        return sectors;
    }
}
