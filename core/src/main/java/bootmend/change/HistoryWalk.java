package bootmend.change;

import bootmend.change.Medium.Likeness;
import bootmend.change.Target.Proof;
import bootmend.device.FileKey;
import bootmend.fat.BootFiles;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** One walk from the newest record back to the oldest that is of the card in hand. */
final class HistoryWalk {

    private final Target target;
    private final BootFiles volume;
    private final List<UndoRecord> newestFirst;
    private final List<UndoRecord> forgotten;
    private final boolean otherMediums;
    private final List<UndoRecord> chain = new ArrayList<>();
    private State firm = new State();
    /** Members of the chain, from here back, of which nothing shows yet that they are this card's. */
    private final List<UndoRecord> possible = new ArrayList<>();
    /** Whether one of them found nothing that only the one before it could have left. */
    private boolean isLoose;

    /** How the card was before them, if they are. */
    private State tentative = firm;

    private final List<UndoRecord> untold = new ArrayList<>();

    /** The card as it was before the changes that were met so far. */
    private static final class State {

        private final Map<String, byte[]> content = new HashMap<>();
        private final Map<Long, byte[]> sectors = new HashMap<>();

        State before(UndoRecord record) {
            State before = new State();
            before.content.putAll(content);
            before.sectors.putAll(sectors);
            before.sectors.putAll(record.plan().contentBefore());
            record.plan().files().forEach(file -> before.content.put(file.path(), file.before()));
            return before;
        }
    }

    /**
     * @param forgotten changes that were begun, of which it is not known what became
     * @param otherMediums whether a change to what surely was another file may count, as that file may have been moved
     */
    HistoryWalk(
            Target target,
            BootFiles volume,
            List<UndoRecord> newestFirst,
            List<UndoRecord> forgotten,
            boolean otherMediums)
            throws IOException {
        this.target = target;
        this.volume = volume;
        this.newestFirst = newestFirst;
        this.forgotten = forgotten;
        this.otherMediums = otherMediums;
        for (int i = 0; i < newestFirst.size() && untold.isEmpty(); i++) {
            visit(i);
        }
        if (!possible.isEmpty()) {
            chain.removeAll(possible);
            untold.addAll(0, possible);
        }
    }

    /** This card's changes, the newest first. */
    List<UndoRecord> found() {
        return chain;
    }

    /** Changes that may be this card's or a sister's, the newest first. */
    List<UndoRecord> untold() {
        return untold;
    }

    private void visit(int index) throws IOException {
        UndoRecord record = newestFirst.get(index);
        if (isUndoneElsewhere(record)) {
            return;
        }
        if (isOwn(record)) {
            own(record);
        } else if (mayCount(record) && fits(record, tentative)) {
            switch (proof(record, tentative)) {
                case NONE -> {}
                case POSSIBLE -> addPossible(record, false);
                case SHOWN -> shown(record, index);
            }
        }
    }

    /** What needs none of the possible changes to fit says that those were a sister's. */
    private void own(UndoRecord record) throws IOException {
        if (fits(record, firm)) {
            chain.removeAll(possible);
        } else if (!fits(record, tentative)) {
            return;
        } else {
            firm = tentative;
        }
        add(record);
    }

    private void add(UndoRecord record) {
        possible.clear();
        isLoose = false;
        chain.add(record);
        firm = firm.before(record);
        tentative = firm;
    }

    private void addPossible(UndoRecord record, boolean marked) {
        isLoose |= !marked && !possible.isEmpty();
        chain.add(record);
        possible.add(record);
        tentative = tentative.before(record);
    }

    private void shown(UndoRecord record, int index) throws IOException {
        List<UndoRecord> alike = new ArrayList<>(List.of(record));
        for (UndoRecord other : newestFirst.subList(index + 1, newestFirst.size())) {
            boolean fits = (isOwn(other) || mayCount(other)) && !isUndoneElsewhere(other) && fits(other, tentative);
            if (fits && proof(other, tentative) == Proof.SHOWN) {
                alike.add(other);
            }
        }
        for (UndoRecord other : forgotten) {
            if (fits(other, tentative) && proof(other, tentative) == Proof.SHOWN) {
                alike.add(other);
            }
        }
        if (alike.stream().anyMatch(this::isOwn)) {
            // This card got the same change in the same two seconds, and its own record says so.
            return;
        }
        if (alike.size() > 1 || likeness(record) == Likeness.OTHER && !isOfFile(record)) {
            untold.addAll(alike);
        } else if (!possible.isEmpty() && isLoose && proof(record, firm) != Proof.NONE) {
            chain.removeAll(possible);
            add(record);
        } else if (possible.isEmpty() || proof(record, firm) != Proof.NONE) {
            // Its mark stands on the card as it is, so the possible changes, which found it there, were made to this
            // card.
            firm = tentative;
            add(record);
        } else {
            addPossible(record, true);
        }
    }

    /** What the members of the chain found is known to be of this card; what any other change found may be a sister's. */
    private Proof proof(UndoRecord record, State then) throws IOException {
        List<UndoRecord> others = newestFirst.stream()
                .filter(other -> !chain.contains(other) && !other.id().equals(record.id()))
                .toList();
        return target.proof(record, then.sectors, others);
    }

    private Likeness likeness(UndoRecord record) {
        return record.medium().to(target.medium());
    }

    private boolean isOwn(UndoRecord record) {
        return likeness(record) == Likeness.SAME || likeness(record) == Likeness.MOVED;
    }

    private static boolean isOfFile(UndoRecord record) {
        return record.medium().key().startsWith(FileKey.PREFIX);
    }

    private boolean mayCount(UndoRecord record) {
        return likeness(record) == Likeness.UNKNOWN
                || otherMediums
                        && likeness(record) == Likeness.OTHER
                        && !record.medium().isFileInPlace();
    }

    /** Undone on a card of the same make-up; on this one, another record made the same change. */
    private boolean isUndoneElsewhere(UndoRecord record) {
        return record.state() == UndoRecord.State.UNDONE
                && chain.stream().noneMatch(later -> later.takesBack().equals(record.id()));
    }

    private boolean fits(UndoRecord record, State then) throws IOException {
        if (record.plan().isRepair() || record.plan().files().isEmpty()) {
            return target.stands(record.plan(), then.sectors);
        }
        for (FileChange change : record.plan().files()) {
            byte[] now = then.content.containsKey(change.path())
                    ? then.content.get(change.path())
                    : History.read(volume, change.path(), PlanBounds.MOST_FILE_BYTES);
            if (!Arrays.equals(now, change.after())) {
                return false;
            }
        }
        return true;
    }
}
