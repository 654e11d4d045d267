package bootmend.change;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.change.Medium.Likeness;
import bootmend.change.Target.Standing;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Finds the interrupted change of the card in hand, and finishes or undoes it.
 *
 * <p>Cards are clones of one another, so that a record is like a card says nothing. A record belongs to a card when the
 * medium is the very one, or when something stands there that only this change wrote: not an untouched sister, not a
 * sister after a change of its own.
 */
public final class Recovery {

    private final Target target;
    private final UndoStore store;

    public Recovery(Target target, UndoStore store) {
        this.target = target;
        this.store = store;
    }

    /** Which interrupted change waits on this card. */
    public Interruption look() throws CardException, IOException {
        List<UndoRecord> open = store.openFor(target.id()).stream()
                .filter(record -> record.plan().card().equals(target.id())
                        || record.plan().writesBootSector())
                .toList();
        List<Standing> own = new ArrayList<>();
        List<Standing> others = new ArrayList<>();
        for (UndoRecord record : open) {
            Likeness likeness = record.medium().to(target.medium());
            Standing standing = target.look(record);
            boolean isOwn = likeness == Likeness.SAME
                    || likeness == Likeness.MOVED && standing.change().isBegun();
            (isOwn ? own : others).add(standing);
        }
        Optional<OpenChange> begun = newest(
                own.stream().map(Standing::change).filter(OpenChange::isBegun).toList());
        if (begun.isPresent()) {
            return new Interruption.Exact(begun.get());
        }
        Interruption byEvidence = byEvidence(others, open);
        if (!(byEvidence instanceof Interruption.None)) {
            return byEvidence;
        }
        Optional<OpenChange> idle = newest(own.stream().map(Standing::change).toList());
        if (idle.isPresent()) {
            return new Interruption.Exact(idle.get());
        }
        List<UndoRecord> alike = open.stream()
                .filter(record -> record.plan().card().equals(target.id()))
                .toList();
        return alike.isEmpty() ? new Interruption.None() : new Interruption.Elsewhere(alike);
    }

    /** Files among the open records of such a card that are not whole, of which nothing can be told. */
    public List<Path> incomplete() throws CardException, IOException {
        return store.incompleteFor(target.id());
    }

    /** An interrupted change forbids the next, so of several that seem to stand on one card the newest was begun last. */
    private static Optional<OpenChange> newest(List<OpenChange> oldestFirst) {
        return oldestFirst.isEmpty() ? Optional.empty() : Optional.of(oldestFirst.get(oldestFirst.size() - 1));
    }

    private Interruption byEvidence(List<Standing> others, List<UndoRecord> open) throws CardException, IOException {
        List<OpenChange> candidates = new ArrayList<>();
        Set<UndoRecord> explaining = new LinkedHashSet<>();
        boolean sure = true;
        for (Standing standing : others) {
            if (!standing.evidence()) {
                continue;
            }
            UndoRecord record = standing.change().record();
            boolean otherMedium = record.medium().to(target.medium()) == Likeness.OTHER;
            if (otherMedium && record.medium().isFileInPlace()) {
                // This is a copy of a card that still is where it was; the record is that one's.
                continue;
            }
            List<UndoRecord> explained = explanations(record, open);
            boolean own = explained.stream().anyMatch(this::isOfThisMedium);
            if (own || otherMedium && !explained.isEmpty()) {
                continue;
            }
            candidates.add(standing.change());
            explaining.addAll(explained);
            sure &= !otherMedium && explained.isEmpty() && isMarked(standing.change());
        }
        if (candidates.isEmpty()) {
            return new Interruption.None();
        }
        return sure && candidates.size() == 1
                ? new Interruption.Exact(candidates.get(0))
                : new Interruption.Ambiguous(candidates, List.copyOf(explaining));
    }

    /**
     * A repair puts a card into the state that its sisters never left, and so does undoing a change, once all of it is
     * undone; only the time in a folder's entry marks what a change wrote.
     */
    private boolean isMarked(OpenChange change) throws CardException, IOException {
        UndoRecord record = change.record();
        if (record.plan().isRepair()) {
            return target.isTimed(record);
        }
        return !record.takesOtherBack()
                || change.extent() != OpenChange.Extent.ALL
                || store.doneFor(record.plan().card()).stream()
                        .anyMatch(done -> done.id().equals(record.takesBack()));
    }

    private boolean isOfThisMedium(UndoRecord record) {
        return record.medium().to(target.medium()) == Likeness.SAME;
    }

    /** Changes after which, or before which, a card that {@code open} was never made to would look like this one. */
    private List<UndoRecord> explanations(UndoRecord open, List<UndoRecord> allOpen) throws CardException, IOException {
        List<UndoRecord> explaining = new ArrayList<>();
        List<UndoRecord> all = new ArrayList<>(store.doneFor(open.plan().card()));
        allOpen.stream().filter(other -> !other.id().equals(open.id())).forEach(all::add);
        for (UndoRecord record : all) {
            boolean after = record.state() == UndoRecord.State.DONE && target.explains(record, record.plan(), open);
            if (after || target.explains(record, record.plan().reversed(""), open)) {
                explaining.add(record);
            }
        }
        for (UndoRecord forgotten : store.forgottenFor(target.id())) {
            Standing standing = target.look(forgotten);
            boolean begun = standing.evidence() && target.begunBy(forgotten).containsAll(target.begunBy(open));
            if (begun || target.explains(forgotten, forgotten.plan().reversed(""), open)) {
                explaining.add(forgotten);
            }
        }
        return explaining;
    }

    /** The change that surely waits on this card, begun or not, or that was made to it and does not fit it any more. */
    public Optional<OpenChange> find() throws CardException, IOException {
        return look().exact();
    }

    /**
     * The change that a user says is this card's, where that can be.
     *
     * @param id of one of the candidates of {@link Interruption.Ambiguous}
     */
    public Optional<OpenChange> named(String id) throws CardException, IOException {
        Interruption found = look();
        if (found instanceof Interruption.Ambiguous ambiguous) {
            return ambiguous.candidates().stream()
                    .filter(change -> change.record().id().equals(id))
                    .findFirst();
        }
        return found.exact().filter(change -> change.record().id().equals(id));
    }

    /**
     * Writes what is left of the change, reads it back, and notes it as done.
     *
     * @throws CardException of kind REFUSED, and nothing was written, where nothing of it stands on the card or something
     *     else does; of kind INTERRUPTED where it fails again
     */
    public Recovered finish(OpenChange change) throws CardException {
        UndoRecord record = change.record();
        OpenChange now = checked(record, record.plan(), record.takesOtherBack());
        if (!now.isBegun()) {
            throw CardException.refused(
                    "nothing of the change stands on this card, so there is nothing to finish",
                    "Nothing was written. Put the record away as undone, then make the change anew if it is still wanted.");
        }
        return new Recovered.Finished(run(record, record.plan(), () -> target.readBack(record.plan()), () -> {
            UndoRecord done = store.finish(record);
            if (done.takesOtherBack()) {
                store.markTakenBack(done.takesBack(), done.plan().card());
            }
            return done;
        }));
    }

    /** Writes the old content back, reads it back, and notes the change as undone. */
    public Recovered undo(OpenChange change) throws CardException {
        UndoRecord record = change.record();
        Plan back = record.plan().reversed("undo: " + record.plan().title());
        OpenChange now = checked(record, back, !record.takesOtherBack());
        if (now.extent() == OpenChange.Extent.NOTHING && isLeftAlone(back)) {
            return close(record);
        }
        return new Recovered.Undone(run(
                record,
                back,
                () -> {
                    target.readBackUndone(back);
                    return false;
                },
                () -> store.closeTakenBack(record)));
    }

    /** What a cut leaves beside a file is cleaned up even where no file was changed. */
    private static boolean isLeftAlone(Plan back) {
        return !back.isOfFolder();
    }

    private Recovered close(UndoRecord record) throws CardException {
        try {
            return new Recovered.Closed(store.closeTakenBack(record));
        } catch (IOException | RuntimeException e) {
            throw CardException.refused(
                    "the undo record " + record.file() + " could not be put away (" + e.getMessage() + ")",
                    "Nothing was written; the card is as it was. Make room in bootmend's data folder, then try again.",
                    e);
        }
    }

    private Committed.Recorded run(UndoRecord record, Plan plan, Attempt.Check check, Attempt.Note note)
            throws CardException {
        return new Attempt(target, record, "the recovery").run(() -> target.left(plan, record), check, note);
    }

    /** How far the change came, as the card is now; a record that may not be carried out on it is refused. */
    private OpenChange checked(UndoRecord record, Plan plan, boolean backwards) throws CardException {
        target.gate(
                plan,
                backwards,
                "Nothing was written. The undo record " + record.file()
                        + " is not one that bootmend wrote for this card; move it out of the way if it is of no use.");
        OpenChange now;
        try {
            now = target.look(record).change();
        } catch (IOException | RuntimeException e) {
            throw CardException.refused(
                    "the card could not be read again (" + e.getMessage() + ")",
                    "Nothing was written. Check that the card sits firmly in its reader, then try again.",
                    e);
        }
        if (now.extent() == OpenChange.Extent.FOREIGN) {
            throw foreign(now);
        }
        return now;
    }

    private static CardException foreign(OpenChange change) {
        List<Long> sectors = change.foreignSectors();
        String where = sectors.isEmpty()
                ? "a file was changed since, to what the cut change never wrote"
                : "the card was changed since: its sector at byte " + sectors.get(0)
                        + " holds what the cut change never wrote"
                        + (sectors.size() > 1 ? " (and " + (sectors.size() - 1) + " more)" : "");
        return CardException.refused(
                where,
                "Nothing was written. The record is " + change.record().file() + ".",
                NextStep.Plain.SHOW_CARD,
                NextStep.Plain.REPAIR_CARD);
    }
}
