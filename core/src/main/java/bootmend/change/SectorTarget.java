package bootmend.change;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.device.CachedDevice;
import bootmend.device.OverlayDevice;
import bootmend.device.PartitionWindow;
import bootmend.device.WriteGuard;
import bootmend.fat.BootFiles;
import bootmend.fat.FatVolume;
import bootmend.fat.SectorChange;
import bootmend.fat.SectorMap;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;

/** The sectors of a card. */
final class SectorTarget extends Target {

    private final BlockDevice card;
    private final PartitionWindow partition;

    SectorTarget(BlockDevice card, PartitionWindow partition, CardId id, Medium medium, BooleanSupplier named) {
        super(id, medium, named);
        this.card = card;
        this.partition = partition;
    }

    @Override
    FilePlanner planner(LocalDateTime now, boolean inPlaceAllowed) throws IOException {
        return new ChangePlanner(FatVolume.open(partition), id(), now, inPlaceAllowed);
    }

    @Override
    BootFiles files() throws IOException {
        return FatVolume.open(partition);
    }

    @Override
    void gate(Plan plan, boolean backwards, String remedy) throws CardException {
        PlanBounds.check(plan, remedy);
        if (plan.isOfFolder()) {
            throw CardException.refused("the plan is one for a mounted folder, and this is the card itself", remedy);
        }
        if (plan.card().volumeStart() != partition.start()) {
            throw CardException.refused(
                    "the plan is for a boot partition that starts at byte "
                            + plan.card().volumeStart() + ", and this card's starts at byte " + partition.start(),
                    remedy);
        }
        SectorMap map = map(plan, backwards);
        for (PlanStep step : plan.steps()) {
            for (SectorChange change : step.changes()) {
                Optional<String> fault = outside(change)
                        ? Optional.of("lies outside the boot partition")
                        : map.fault(change.moved(-partition.start()), plan.isRepair(), backwards);
                if (fault.isPresent()) {
                    throw CardException.refused(
                            "the plan names the sector at byte " + change.offset() + ", which such a change never "
                                    + "touches: it " + fault.get(),
                            remedy);
                }
            }
        }
    }

    private boolean outside(SectorChange change) {
        return change.offset() < partition.start()
                || change.offset() - partition.start() > partition.getSize() - change.after().length;
    }

    /** By the volume as it is read now; for a repair, as that leaves it or found it sound. */
    private SectorMap map(Plan plan, boolean backwards) throws CardException {
        try {
            if (!plan.isRepair()) {
                return SectorMap.of(FatVolume.open(partition));
            }
            Map<Long, byte[]> sound = backwards ? plan.contentBefore() : plan.contentAfter();
            PartitionWindow repaired =
                    new PartitionWindow(new OverlayDevice(card, sound), partition.start(), partition.getSize());
            return SectorMap.ofRepaired(FatVolume.open(repaired), partition);
        } catch (IOException | RuntimeException e) {
            throw CardException.refused(
                    "the plan does not go with the boot partition as it is (" + e.getMessage() + ")",
                    "Nothing was written. Check that the card sits firmly in its reader, then try again.",
                    e);
        }
    }

    @Override
    void refuseUnlessAsPlanned(Plan plan) throws CardException {
        try {
            long changed = ReadBack.firstDifference(card, plan.contentBefore());
            if (changed >= 0) {
                throw CardException.refused(
                        "the sector at byte " + changed + " changed since it was read",
                        "Try again; if this happens twice, take the card out and put it back in.");
            }
            new ReadBack(new OverlayDevice(card, plan.contentAfter()), plan).checkFiles();
        } catch (CardException e) {
            throw e;
        } catch (IOException | RuntimeException e) {
            throw CardException.refused(
                    "the plan does not hold on this card (" + e.getMessage() + ")",
                    "Nothing was written.",
                    e,
                    NextStep.Plain.REPAIR_CARD);
        }
    }

    /** Sectors that hold what the plan wrote show that it was begun; a sister that was left alone holds none. */
    @Override
    Standing look(UndoRecord record) throws IOException {
        if (!PlanBounds.isWithin(record.plan(), card.getSize())) {
            return new Standing(new OpenChange(record, OpenChange.Extent.FOREIGN, false, List.of()), false);
        }
        Progress progress = Progress.of(record.plan(), card);
        OpenChange.Extent extent = progress.extent();
        boolean committed = extent != OpenChange.Extent.FOREIGN && progress.isCommitted(record.plan());
        OpenChange change = new OpenChange(record, extent, committed, progress.foreignSectors());
        return new Standing(change, change.isBegun());
    }

    @Override
    boolean isTimed(UndoRecord record) throws IOException {
        FolderSlots slots = FolderSlots.of(record.plan());
        return !slots.isEmpty() && slots.stand(card);
    }

    @Override
    Set<Object> begunBy(UndoRecord record) throws IOException {
        return Progress.of(record.plan(), card).begun().boxed().collect(Collectors.toSet());
    }

    @Override
    boolean explains(UndoRecord by, Plan plan, UndoRecord open) throws IOException {
        Map<Long, byte[]> content = plan.contentAfter();
        return PlanBounds.isWithin(plan, card.getSize())
                && Progress.of(open.plan(), card).begun().allMatch(content::containsKey)
                && ReadBack.firstDifference(card, content) < 0;
    }

    /** Where the old content was, something else may lie now that it was released. */
    @Override
    boolean holds(Plan plan) throws IOException {
        if (!PlanBounds.isWithin(plan, card.getSize()) || ReadBack.firstDifference(card, plan.contentBefore()) >= 0) {
            return false;
        }
        try {
            new ReadBack(new OverlayDevice(card, plan.contentAfter()), plan).checkFiles();
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    @Override
    boolean stands(Plan plan, Map<Long, byte[]> before) throws IOException {
        return PlanBounds.isWithin(plan, card.getSize())
                && ReadBack.firstDifference(new OverlayDevice(card, before), plan.contentAfter()) < 0;
    }

    /** The folder entries that a change wrote hold its time; what a sister held before a change of its own does not. */
    @Override
    Proof proof(UndoRecord record, Map<Long, byte[]> before, List<UndoRecord> others) throws IOException {
        Plan plan = record.plan();
        if (!PlanBounds.isWithin(plan, card.getSize())) {
            return Proof.NONE;
        }
        BlockDevice then = new OverlayDevice(card, before);
        FolderSlots slots = FolderSlots.of(plan);
        if (!(slots.isEmpty() ? stands(plan, before) : slots.stand(then))) {
            return Proof.NONE;
        }
        if (slots.isEmpty()) {
            // A repair puts a card into the state that its sisters never left.
            return Proof.POSSIBLE;
        }
        Set<Long> places = slots.places();
        for (UndoRecord other : others) {
            Map<Long, byte[]> natural = other.plan().contentBefore();
            // What an undoing found holds the mark of what it undoes, and that has a record of its own.
            if (!other.takesOtherBack()
                    && natural.keySet().containsAll(places)
                    && PlanBounds.isWithin(other.plan(), card.getSize())
                    && ReadBack.firstDifference(then, natural) < 0) {
                return Proof.POSSIBLE;
            }
        }
        return Proof.SHOWN;
    }

    @Override
    Writing all(Plan plan, UndoRecord record) {
        return writing(plan, plan.steps().stream().map(PlanStep::changes).toList());
    }

    @Override
    Writing left(Plan plan, UndoRecord record) throws IOException {
        return writing(plan, Progress.of(plan, card).leftToFinish(plan));
    }

    private Writing writing(Plan plan, List<List<SectorChange>> steps) {
        return () -> {
            WriteGuard guard = new WriteGuard(card, plan.sectors());
            for (List<SectorChange> step : steps) {
                for (SectorChange change : step) {
                    guard.write(change.offset(), ByteBuffer.wrap(change.after()).asReadOnlyBuffer());
                }
                guard.flush();
            }
        };
    }

    @Override
    boolean readBack(Plan plan) throws IOException {
        return new ReadBack(card, plan).check() == SecondReader.Answer.AGREES;
    }

    @Override
    void readBackUndone(Plan back) throws IOException {
        CachedDevice.drop(card);
        long wrong = ReadBack.firstDifference(card, back.contentAfter());
        if (wrong >= 0) {
            throw new IOException("the sector at byte " + wrong + " does not read back as it was written");
        }
    }

    @Override
    Committed.Recorded committed(UndoRecord record, boolean secondReaderAgrees) {
        return new Committed.ToSectors(record, isStillNamed(), secondReaderAgrees);
    }

    @Override
    String again() {
        return "Put the card back in.";
    }
}
