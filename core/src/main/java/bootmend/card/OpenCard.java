package bootmend.card;

import bootmend.CardException;
import bootmend.Sentence;
import bootmend.boot.BootCard;
import bootmend.change.CardId;
import bootmend.change.Committed;
import bootmend.change.FilePlanner;
import bootmend.change.History;
import bootmend.change.Interruption;
import bootmend.change.Plan;
import bootmend.change.Recovery;
import bootmend.change.Target;
import bootmend.change.UndoPlanner;
import bootmend.change.UndoRecord;
import bootmend.change.UndoStore;
import bootmend.device.CardOpener;
import bootmend.device.FileType;
import bootmend.fat.BootFiles;
import bootmend.finding.Finding;
import bootmend.finding.Fix;
import bootmend.finding.Place;
import bootmend.finding.Rule;
import bootmend.finding.Severity;
import bootmend.keep.KeptFiles;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;

/** A card whose boot partition was found and opened; no write is possible through it but by a plan. */
public sealed interface OpenCard extends Closeable permits RawCard, FolderCard, LoneConfig, KeptCard {

    /** Opens the card that {@code request} names; every failure becomes an error that a user can act on. */
    static OpenCard open(CardOpener opener, CardRequest request, boolean forChanging) throws CardException {
        try {
            if (LoneConfig.isNamed(request)) {
                return LoneConfig.open(request, forChanging);
            }
            Path folder = FolderCard.folder(request.card());
            if (FileType.of(folder) == FileType.FILE && KeptFiles.isOne(folder)) {
                return KeptCard.open(folder, forChanging);
            }
            return FileType.of(folder) == FileType.FOLDER
                    ? FolderCard.open(request, folder, forChanging)
                    : RawCard.open(opener.open(request.card(), forChanging), request, forChanging);
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    /** Whether it is a card, or a boot partition, at all; a config file on its own is neither. */
    default boolean hasBootPartition() {
        return true;
    }

    /** Whether it is held for a change, rather than opened to be looked at. */
    boolean isForChanging();

    /** What the user called it. */
    String named();

    /** The path as this computer knows the card by, whichever way it was written. */
    String path();

    /** What it is to this computer, in words. */
    String kind();

    long bytes() throws IOException;

    /** The boot partition's files. */
    BootFiles volume();

    PartitionView partition() throws IOException;

    /** Sentences on what was damaged in the partition table. */
    List<String> tableWarnings();

    /** The same as findings. */
    default List<Finding> tableFindings() {
        Rule rule = Rule.of(
                "partition-table",
                Rule.always(Severity.WARNING),
                Fix.NOTHING,
                "A partition table is never touched here.");
        return tableWarnings().stream()
                .map(warning -> Finding.of(rule, Place.Region.PARTITION_TABLE, Sentence.of(warning)))
                .toList();
    }

    /** What only shows when every FAT copy and every chain is looked at. */
    List<Finding> fullLook();

    /**
     * The card as its boot chain is looked at.
     *
     * @throws CardException where there is none to look at
     */
    BootCard bootCard() throws CardException;

    /** Whether a try-once start of this card takes another partition rather than another file. */
    boolean switchesPartition();

    CardId id();

    /**
     * Works files' changes out.
     *
     * @param written the time that changed files get, local
     * @param inPlace whether a file on a full card may be overwritten where it stands
     * @throws CardException where nothing of it is ever changed
     */
    FilePlanner planner(LocalDateTime written, boolean inPlace) throws CardException;

    /** What a plan for it is carried out on. */
    Target target() throws IOException;

    /** The interrupted change that waits on this card, as it was when this was first asked. */
    Interruption waiting(UndoStore store) throws CardException, IOException;

    /** The plan that undoes {@code record}. */
    default Plan undo(UndoRecord record, LocalDateTime written, boolean inPlace) throws CardException, IOException {
        return new UndoPlanner(target()).plan(record, written, inPlace);
    }

    default Committed commit(Workplace workplace, Plan plan) throws CardException {
        return workplace.committer().commit(readTarget(), plan);
    }

    /** Makes the change that {@link #undo} worked out and marks {@code record} as undone. */
    default Committed commitBack(Workplace workplace, Plan back, UndoRecord record) throws CardException {
        return workplace.committer().undo(readTarget(), back, record);
    }

    default Recovery recovery(UndoStore store) throws IOException {
        return new Recovery(target(), store);
    }

    default History history(UndoStore store) throws CardException, IOException {
        return History.of(target(), store);
    }

    private Target readTarget() throws CardException {
        try {
            return target();
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    /**
     * The card itself, for what works on sectors.
     *
     * @param doing what is not done to a mounted folder
     */
    RawCard raw(String doing) throws CardException;
}
