package bootmend.change;

import bootmend.CardException;
import bootmend.device.OverlayDevice;
import bootmend.fat.BootFiles;
import bootmend.fat.DirectoryEntry;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The changes that were made to one card from this computer, in order.
 *
 * <p>Records are kept by what a card looks like, and cards written from one image look alike. So the chain is followed
 * backwards by content: a record belongs to this card when it left the files as they are now, or as the record after it
 * found them. Records made at this path are asked first.
 */
public final class History {

    /** Only config files are ever changed, and none is larger. */
    private static final int MOST_BYTES = 1 << 20;

    private final List<UndoRecord> oldestFirst;
    private final BootFiles volume;

    private History(List<UndoRecord> oldestFirst, BootFiles volume) {
        this.oldestFirst = oldestFirst;
        this.volume = volume;
    }

    /** Whether a card holds content, by place, when some sectors are taken to hold what they held before. */
    private interface Sectors {
        boolean hold(Map<Long, byte[]> content, Map<Long, byte[]> before) throws IOException;
    }

    /** @param cardPath where the card is now */
    public static History of(BlockDevice card, BootFiles volume, CardId id, String cardPath, UndoStore store)
            throws CardException, IOException {
        return of(
                (content, before) -> ReadBack.firstDifference(new OverlayDevice(card, before), content) < 0,
                volume,
                id,
                cardPath,
                store);
    }

    /** The same for a mounted folder, whose changes name files alone. */
    public static History of(BootFiles folder, CardId id, String cardPath, UndoStore store)
            throws CardException, IOException {
        return of((content, before) -> false, folder, id, cardPath, store);
    }

    private static History of(Sectors card, BootFiles volume, CardId id, String cardPath, UndoStore store)
            throws CardException, IOException {
        List<UndoRecord> all = store.doneFor(id);
        List<UndoRecord> here = all.stream()
                .filter(record -> record.cardPath().equals(cardPath))
                .toList();
        List<UndoRecord> chain = chain(card, volume, here);
        if (chain.isEmpty() && here.size() < all.size()) {
            chain = chain(card, volume, all);
        }
        Collections.reverse(chain);
        return new History(List.copyOf(chain), volume);
    }

    private static List<UndoRecord> chain(Sectors card, BootFiles volume, List<UndoRecord> newestFirst)
            throws IOException {
        Map<String, byte[]> content = new HashMap<>();
        Map<Long, byte[]> sectors = new HashMap<>();
        List<UndoRecord> chain = new ArrayList<>();
        for (UndoRecord record : newestFirst) {
            boolean undone = record.state() == UndoRecord.State.TAKEN_BACK;
            if (undone && chain.stream().noneMatch(later -> later.takesBack().equals(record.id()))) {
                // Taken back on a card of the same make-up: on this one, another record made the same change.
                continue;
            }
            if (belongs(record, card, sectors, volume, content)) {
                chain.add(record);
                sectors.putAll(record.plan().contentBefore());
                record.plan().files().forEach(file -> content.put(file.path(), file.before()));
            }
        }
        return chain;
    }

    /** @param sectors what the card held before the later changes that are known to be its own */
    private static boolean belongs(
            UndoRecord record, Sectors card, Map<Long, byte[]> sectors, BootFiles volume, Map<String, byte[]> content)
            throws IOException {
        if (record.plan().isRepair() || record.plan().files().isEmpty()) {
            return card.hold(record.plan().contentAfter(), sectors);
        }
        for (FileChange change : record.plan().files()) {
            byte[] now = content.containsKey(change.path())
                    ? content.get(change.path())
                    : read(volume, change.path(), MOST_BYTES);
            if (!Arrays.equals(now, change.after())) {
                return false;
            }
        }
        return true;
    }

    /** The file's content, of which one byte more than {@code length} is enough; null where it is missing. */
    private static byte[] read(BootFiles volume, String path, int length) throws IOException {
        Optional<DirectoryEntry> entry = volume.find(path);
        return entry.isEmpty() ? null : volume.read(entry.get(), length + 1).bytes();
    }

    /** Every change, the oldest first; the first has the number 1. */
    public List<UndoRecord> oldestFirst() {
        return oldestFirst;
    }

    /** The newest change that was not taken back and takes no other back. */
    public Optional<UndoRecord> lastToTakeBack() {
        for (int i = oldestFirst.size() - 1; i >= 0; i--) {
            UndoRecord record = oldestFirst.get(i);
            if (record.state() == UndoRecord.State.DONE && !record.takesOtherBack()) {
                return Optional.of(record);
            }
        }
        return Optional.empty();
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
            byte[] now = read(volume, file.getKey(), MOST_BYTES);
            changes.add(new FileChange(file.getKey(), now, file.getValue()));
        }
        return changes;
    }
}
