package bootmend.change;

import bootmend.CardException;
import bootmend.device.PartitionWindow;
import bootmend.fat.BootFiles;
import bootmend.folder.MountedFolder;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BooleanSupplier;

/** What a plan is carried out on: the sectors of a card, or the files of a mounted folder. */
public abstract sealed class Target permits SectorTarget, FolderTarget {

    private final CardId id;
    private final Medium medium;
    private final BooleanSupplier named;

    Target(CardId id, Medium medium, BooleanSupplier named) {
        this.id = id;
        this.medium = medium;
        this.named = named;
    }

    /**
     * A card's sectors.
     *
     * @param card the whole card
     * @param partition the boot partition of it, as the card's own table says now
     * @param named whether the name that the card was opened by still leads to it; asked before and after writing
     */
    public static Target ofCard(
            BlockDevice card, PartitionWindow partition, CardId id, Medium medium, BooleanSupplier named) {
        return new SectorTarget(card, partition, id, medium, named);
    }

    /** A mounted folder's files. */
    public static Target ofFolder(MountedFolder folder, CardId id, Medium medium, BooleanSupplier named) {
        return new FolderTarget(folder, id, medium, named);
    }

    final CardId id() {
        return id;
    }

    final Medium medium() {
        return medium;
    }

    final boolean isStillNamed() {
        return named.getAsBoolean();
    }

    /** Works out how files of it get new content. */
    abstract FilePlanner planner(LocalDateTime now, boolean inPlaceAllowed) throws IOException;

    /** Its files, as they are now. */
    abstract BootFiles files() throws IOException;

    /**
     * Refuses a plan that names what its kind may not touch, wherever the plan comes from.
     *
     * @param backwards whether it undoes another, so that a damage which that repaired may come back
     * @param remedy what to do about such a plan
     * @throws CardException of kind REFUSED
     */
    abstract void gate(Plan plan, boolean backwards, String remedy) throws CardException;

    /** Refuses a plan that was worked out on something else than what is there now, or that would not work. */
    abstract void refuseUnlessAsPlanned(Plan plan) throws CardException;

    /** How far the change of {@code record} came, and whether it must have been that change. */
    abstract Standing look(UndoRecord record) throws IOException;

    /** Whether the time of the change stands there with what it wrote. */
    abstract boolean isTimed(UndoRecord record) throws IOException;

    /** Where something stands that shows that the change of {@code record} was begun: sectors by place, or files by path. */
    abstract Set<Object> begunBy(UndoRecord record) throws IOException;

    /**
     * Whether all that {@code plan} leaves stands there, and with it all that shows that {@code open} was begun.
     *
     * @param by the record that the plan is of, forwards or backwards
     */
    abstract boolean explains(UndoRecord by, Plan plan, UndoRecord open) throws IOException;

    /** Whether a plan can be carried out sector by sector as it stands; never for files. */
    abstract boolean holds(Plan plan) throws IOException;

    /**
     * Whether all of a finished change stands there, where some sectors are taken to hold what they held before later
     * changes.
     */
    abstract boolean stands(Plan plan, Map<Long, byte[]> before) throws IOException;

    /**
     * What there is to show that a change, whose files stand there, was made to this card.
     *
     * @param before what sectors held before later changes that are known to be the card's own
     * @param others records of changes that may have been made to a sister
     */
    abstract Proof proof(UndoRecord record, Map<Long, byte[]> before, List<UndoRecord> others) throws IOException;

    /** What there is to show that a change was made to a card. */
    enum Proof {
        /** Something stands there that no other change wrote. */
        SHOWN,
        /** What stands there would stand on a sister as well that the change was never made to. */
        POSSIBLE,
        /** Something that the change wrote does not stand there. */
        NONE
    }

    /** Every write of a plan; nothing is written yet. */
    abstract Writing all(Plan plan, UndoRecord record) throws IOException;

    /** Works out what is left to write of a plan, and reads what that takes; nothing is written yet. */
    abstract Writing left(Plan plan, UndoRecord record) throws IOException;

    /** Writes that are known and not made yet. */
    @FunctionalInterface
    interface Writing {
        void run() throws IOException;
    }

    /** Checks that all of the plan stands there; returns whether the second reader read the files too. */
    abstract boolean readBack(Plan plan) throws IOException;

    /** Checks that the state from before stands there. */
    abstract void readBackUndone(Plan back) throws IOException;

    abstract Committed.Recorded committed(UndoRecord record, boolean secondReaderAgrees);

    /** What to do first after a cut, as the start of a sentence. */
    abstract String again();

    /**
     * An interrupted change on a card.
     *
     * @param evidence whether something stands there that only a change with this record's bytes and time wrote
     */
    record Standing(OpenChange change, boolean evidence) {}
}
