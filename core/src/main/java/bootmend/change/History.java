package bootmend.change;

import bootmend.CardException;
import bootmend.config.VisibleText;
import bootmend.fat.BootFiles;
import bootmend.fat.DirectoryEntry;
import java.io.IOException;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The changes that were made to one card from this computer, in order.
 *
 * <p>Records are kept by what a card looks like, and cards written from one image look alike. So the chain is followed
 * backwards: a record belongs to this card when its files are as the record left them, or as the record after it found
 * them, and the medium is the very one or something stands there that only this change wrote. Where a sister would look
 * the same, that is said in place of a guess.
 */
public final class History {

    private static final int MOST_NAMED = 4;

    private final List<UndoRecord> oldestFirst;
    private final List<UndoRecord> untold;
    private final BootFiles volume;

    private History(List<UndoRecord> oldestFirst, List<UndoRecord> untold, BootFiles volume) {
        this.oldestFirst = List.copyOf(oldestFirst);
        this.untold = List.copyOf(untold);
        this.volume = volume;
    }

    /** The history of the card or folder that {@code target} is. */
    public static History of(Target target, UndoStore store) throws CardException, IOException {
        BootFiles volume = target.files();
        HistoryWalk walk = new HistoryWalk(
                target, volume, store.doneFor(target.id(), target.medium()), store.forgottenFor(target.id()), false);
        if (walk.found().isEmpty() && walk.untold().isEmpty()) {
            // An image that was moved to another disk is another file there.
            walk = new HistoryWalk(target, volume, store.doneFor(target.id()), store.forgottenFor(target.id()), true);
        }
        List<UndoRecord> oldestFirst = new ArrayList<>(walk.found());
        Collections.reverse(oldestFirst);
        return new History(oldestFirst, walk.untold(), volume);
    }

    /** The file's content, of which one byte more than {@code length} is enough; null where it is missing. */
    static byte[] read(BootFiles volume, String path, int length) throws IOException {
        Optional<DirectoryEntry> entry = volume.find(path);
        return entry.isEmpty() ? null : volume.read(entry.get(), length + 1).bytes();
    }

    /**
     * Records of finished changes to the very medium that {@code target} is on, newest first, whatever stands there now: it
     * may have been written by others since, or hold another card's content by now.
     */
    public static List<UndoRecord> onMedium(Target target, UndoStore store) throws CardException, IOException {
        return store.doneFor(target.id(), target.medium()).stream()
                .filter(record -> isSameMedium(record.medium().to(target.medium())))
                .toList();
    }

    private static boolean isSameMedium(Medium.Likeness likeness) {
        return likeness == Medium.Likeness.SAME || likeness == Medium.Likeness.MOVED;
    }

    /** Every change, the oldest first; the first has the number 1. */
    public List<UndoRecord> oldestFirst() {
        return oldestFirst;
    }

    /**
     * Changes, newest first, that may have been made to this card or to one of its sisters: nothing that stands on the
     * card tells which, and neither does the medium.
     */
    public List<UndoRecord> untold() {
        return untold;
    }

    /**
     * The newest change that was not undone and undoes no other.
     *
     * @throws CardException of kind REFUSED where it cannot be told whether a change was made to this card
     */
    public Optional<UndoRecord> lastToUndo() throws CardException {
        Set<String> undone = new HashSet<>();
        for (int i = oldestFirst.size() - 1; i >= 0; i--) {
            UndoRecord record = oldestFirst.get(i);
            undone.add(record.takesBack());
            if (record.state() == UndoRecord.State.DONE && !record.takesOtherBack() && !undone.contains(record.id())) {
                return Optional.of(record);
            }
        }
        if (untold.stream().anyMatch(record -> record.state() == UndoRecord.State.DONE && !record.takesOtherBack())) {
            throw CardException.refused(
                    "it cannot be told whether " + names()
                            + " was made to this card or to another written from the same " + "image",
                    "Nothing was written. Go back with a saved profile or a copy of the config file instead.");
        }
        return Optional.empty();
    }

    private String names() {
        return untold.stream()
                .limit(MOST_NAMED)
                .map(record -> "\"" + VisibleText.of(record.plan().title()) + "\" of "
                        + record.created().truncatedTo(ChronoUnit.SECONDS) + " at " + VisibleText.of(record.cardPath()))
                .collect(Collectors.joining(" or "));
    }

    /**
     * What every file that was changed after change {@code number} held then; 0 asks for the time before the first.
     * Each pair is the file's content now and then.
     */
    public List<FileChange> filesAfter(int number) throws IOException {
        Map<String, byte[]> then = new HashMap<>();
        for (int i = oldestFirst.size() - 1; i >= number; i--) {
            oldestFirst.get(i).plan().files().forEach(file -> then.put(file.path(), file.before()));
        }
        List<FileChange> changes = new ArrayList<>();
        for (Map.Entry<String, byte[]> file : then.entrySet()) {
            byte[] now = read(volume, file.getKey(), PlanBounds.MOST_FILE_BYTES);
            changes.add(new FileChange(file.getKey(), now, file.getValue()));
        }
        return changes;
    }
}
