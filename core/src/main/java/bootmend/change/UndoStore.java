package bootmend.change;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.config.VisibleText;
import java.io.IOException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ThreadLocalRandom;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * The undo records on this computer: {@code open/} holds those of changes not known to be finished, {@code done/} a
 * folder for each make-up of card with the others, {@code forgotten/} those that a user gave up. A record's state is where
 * it lies and what its name ends in, so that changing the state is one rename. A name also tells records of different
 * mediums apart, so that those of a card's sisters need not be read.
 *
 * <p>Of a medium's finished records the newest hundred are always kept, and all of the last 365 days.
 */
public final class UndoStore {

    /** Between the card's key and the record's id in the name of an open record. */
    private static final String SEPARATOR = "_";

    /** Before what tells mediums apart. */
    private static final String TAG = ".m";

    private static final String SUFFIX = ".undo";
    private static final String UNDONE_SUFFIX = ".taken-back.undo";

    /** A medium keeps at least this many records, whatever their age. */
    private static final int KEPT_RECORDS = 100;
    /** A record is kept at least this long, however many there are. */
    private static final int KEPT_DAYS = 365;

    private final Path home;
    private final RecordFiles files;
    /** The latest stamp given to each card in this run. */
    private final Map<CardId, String> latest = new ConcurrentHashMap<>();
    /** Cards whose records were looked through in this run; once is enough. */
    private final Set<CardId> pruned = ConcurrentHashMap.newKeySet();

    /** @param home bootmend's data folder; made when the first record is */
    public UndoStore(Path home) {
        this(home, new RecordFiles.OfThisComputer());
    }

    UndoStore(Path home, RecordFiles files) {
        this.home = home;
        this.files = files;
    }

    /**
     * Writes the record of a change that is about to begin and forces it, and the folder it is in, to this computer's
     * disk.
     */
    UndoRecord open(Plan plan, Medium medium, String takesBack, Instant now) throws CardException {
        byte[] bytes = RecordFormat.write(now, medium, takesBack, plan);
        try {
            Path file = fileForNew(plan.card(), medium, now);
            try {
                files.create(file, bytes);
                checkReadsBack(file, plan);
            } catch (IOException | RuntimeException e) {
                deleteQuietly(file, e);
                throw e;
            }
            return new UndoRecord(idOf(file), now, medium, plan, takesBack, UndoRecord.State.OPEN, file);
        } catch (IOException | RuntimeException e) {
            throw CardException.refused(
                    "the undo record could not be written to " + home + " (" + e + ")",
                    "Nothing was changed on the card. Make room, or take another data folder.",
                    e,
                    NextStep.Plain.SET_DATA_FOLDER);
        }
    }

    /** What is left of a record that was not written says nothing; it only takes room. */
    private void deleteQuietly(Path file, Exception e) {
        try {
            files.delete(file);
        } catch (IOException | RuntimeException deleting) {
            e.addSuppressed(deleting);
        }
    }

    /** The name's random end keeps records apart that begin in the same moment, here or in another process. */
    private Path fileForNew(CardId card, Medium medium, Instant now) throws CardException, IOException {
        String end = HexFormat.of().toHexDigits(ThreadLocalRandom.current().nextInt());
        String tag = medium.tag().isEmpty() ? "" : TAG + medium.tag();
        return openFolder().resolve(card.key() + SEPARATOR + nextStamp(card, now) + "-" + end + tag + SUFFIX);
    }

    /** A stamp after every other of this card, even where the computer's clock went back since. */
    private String nextStamp(CardId card, Instant now) throws CardException, IOException {
        if (!latest.containsKey(card)) {
            latest.putIfAbsent(card, newestStamp(card));
        }
        return latest.compute(card, (same, known) -> max(RecordStamp.of(now), RecordStamp.after(known)));
    }

    private String newestStamp(CardId card) throws CardException, IOException {
        List<String> names = new ArrayList<>(namesIn(doneFolder(card)));
        Stream.concat(namesIn(openFolder()).stream(), namesIn(forgottenFolder()).stream())
                .filter(name -> name.startsWith(card.key() + SEPARATOR))
                .map(name -> name.substring(name.indexOf(SEPARATOR) + 1))
                .forEach(names::add);
        return names.stream()
                .filter(UndoStore::isRecord)
                .map(name -> name.substring(0, RecordStamp.LENGTH))
                .max(Comparator.naturalOrder())
                .orElse("");
    }

    private List<String> namesIn(Path folder) throws CardException, IOException {
        return files.list(folder).stream()
                .map(file -> file.getFileName().toString())
                .toList();
    }

    /** Whether a name is one that this store gives, so that its stamp can be read. */
    private static boolean isRecord(String name) {
        return name.matches("\\d{8}-\\d{6}-\\d{6}-[0-9a-f]{8}(\\.m[0-9a-f]{12})?(\\.taken-back)?\\.undo");
    }

    private static String max(String a, String b) {
        return a.compareTo(b) >= 0 ? a : b;
    }

    /** Takes away the record of a change of which surely nothing was written. */
    void discard(UndoRecord open) throws IOException {
        files.delete(open.file());
    }

    /** Notes that the change was written, forced and read back. */
    UndoRecord finish(UndoRecord open) throws CardException, IOException {
        UndoRecord done = move(open, UndoRecord.State.DONE);
        if (pruned.add(open.plan().card())) {
            prune(done.file().getParent());
        }
        return done;
    }

    /**
     * Drops what is both beyond the newest {@value #KEPT_RECORDS} of a medium and over a year old. A record that cannot be
     * dropped, or that another change to a card of this make-up moved meanwhile, harms nobody by staying.
     */
    private void prune(Path folder) {
        Instant limit = Instant.now().minus(KEPT_DAYS, ChronoUnit.DAYS);
        Map<String, Integer> kept = new HashMap<>();
        try {
            for (String name : namesIn(folder).stream()
                    .filter(UndoStore::isRecord)
                    .sorted(Comparator.reverseOrder())
                    .toList()) {
                if (kept.merge(tagOf(name), 1, Integer::sum) > KEPT_RECORDS) {
                    dropIfOlder(folder.resolve(name), limit);
                }
            }
        } catch (CardException | IOException e) {
            return;
        }
    }

    private void dropIfOlder(Path file, Instant limit) throws IOException {
        try {
            if (files.lastWritten(file).isBefore(limit)) {
                files.delete(file);
            }
        } catch (NoSuchFileException e) {
            return;
        }
    }

    /** What tells a record's medium from others; the same empty text for all of which nothing is known. */
    private static String tagOf(String name) {
        int tag = name.indexOf(TAG);
        return tag < 0 ? "" : name.substring(tag, name.indexOf('.', tag + 1));
    }

    /** Notes that a change which was done is now undone. */
    void markTakenBack(UndoRecord done) throws IOException {
        move(done, UndoRecord.State.UNDONE);
    }

    /** Notes that the change with this id is undone, where it is known here. */
    void markTakenBack(String id, CardId card) throws CardException, IOException {
        for (Path file : files.list(doneFolder(card))) {
            String name = file.getFileName().toString();
            if (isRecord(name) && idOf(file).equals(id) && !name.endsWith(UNDONE_SUFFIX)) {
                files.move(file, doneFile(card, file, true));
            }
        }
    }

    /** Notes that a change which was not done is off the card again; its record is kept. */
    UndoRecord closeTakenBack(UndoRecord open) throws IOException {
        return move(open, UndoRecord.State.UNDONE);
    }

    /**
     * Gives an interrupted change up on the user's word: its record is kept, in {@code forgotten/}, but no card is asked
     * about it any more.
     *
     * @param id of an open record
     * @throws CardException of kind USAGE where there is no such open record
     */
    public UndoRecord forget(String id) throws CardException {
        try {
            for (Path file : files.list(openFolder())) {
                if (isOpenRecord(file) && idOf(file).equals(id)) {
                    return forget(file);
                }
            }
        } catch (CardException e) {
            throw e;
        } catch (IOException e) {
            throw CardException.refused(
                    "the undo record could not be put away (" + e.getMessage() + ")",
                    "Make room in bootmend's data folder, then try again.",
                    e);
        }
        throw CardException.usage(
                "no interrupted change has a record with the id " + VisibleText.of(id),
                "Look at the card, and at the folder " + openFolder() + ", for the ids that there are.");
    }

    private UndoRecord forget(Path file) throws CardException, IOException {
        UndoRecord record = read(file, UndoRecord.State.OPEN)
                .orElseThrow(() -> CardException.usage(
                        "the record " + file + " is not whole, so no change was begun with it",
                        "Nothing has to be done about it."));
        Path kept = forgottenFolder().resolve(file.getFileName().toString());
        files.move(file, kept);
        return record.in(UndoRecord.State.FORGOTTEN, kept);
    }

    /** Every record of a change that is not known to be finished, to whichever card, oldest first. */
    public List<UndoRecord> open() throws CardException, IOException {
        return read(openFolder(), name -> true, UndoRecord.State.OPEN);
    }

    /**
     * Records of changes to such a card that are not known to be finished, oldest first. The serial number is not asked:
     * a cut in the middle of a repair may have left another.
     */
    List<UndoRecord> openFor(CardId card) throws CardException, IOException {
        String end = card.keyWithoutSerial() + SEPARATOR;
        return read(openFolder(), name -> name.contains(end), UndoRecord.State.OPEN);
    }

    /**
     * Files among the open records of such a card that are not whole: cut off before a change was begun, or damaged since.
     */
    List<Path> incompleteFor(CardId card) throws CardException, IOException {
        String end = card.keyWithoutSerial() + SEPARATOR;
        List<Path> incomplete = new ArrayList<>();
        for (Path file : files.list(openFolder())) {
            boolean record = isOpenRecord(file) && file.getFileName().toString().contains(end);
            if (record && read(file, UndoRecord.State.OPEN).isEmpty()) {
                incomplete.add(file);
            }
        }
        return incomplete;
    }

    /** Records that were given up of changes to such a card, oldest first. */
    List<UndoRecord> forgottenFor(CardId card) throws CardException, IOException {
        String end = card.keyWithoutSerial() + SEPARATOR;
        return read(forgottenFolder(), name -> name.contains(end), UndoRecord.State.FORGOTTEN);
    }

    /** Records of finished changes to cards of such a make-up, newest first. */
    public List<UndoRecord> doneFor(CardId card) throws CardException, IOException {
        return newestFirst(read(doneFolder(card), name -> true, UndoRecord.State.DONE));
    }

    /** The same, but of changes to a medium that is surely another one none is read. */
    List<UndoRecord> doneFor(CardId card, Medium medium) throws CardException, IOException {
        String tag = TAG + medium.tag();
        boolean known = !medium.tag().isEmpty();
        return newestFirst(read(
                doneFolder(card), name -> !known || !name.contains(TAG) || name.contains(tag), UndoRecord.State.DONE));
    }

    private static List<UndoRecord> newestFirst(List<UndoRecord> records) {
        records.sort(Comparator.comparing(UndoRecord::id).reversed());
        return records;
    }

    /** A record that could not be read again would be no way back, so it is read before anything is written. */
    private void checkReadsBack(Path file, Plan plan) throws IOException {
        boolean whole = RecordFormat.read(files.read(file, RecordFormat.MOST_BYTES))
                .filter(stored -> stored.plan().writesTheSameAs(plan))
                .isPresent();
        if (!whole) {
            throw new IOException("it does not read back as it was written");
        }
    }

    private Path openFolder() {
        return home.resolve("open");
    }

    private Path forgottenFolder() {
        return home.resolve("forgotten");
    }

    private Path doneFolder(CardId card) {
        return home.resolve("done").resolve(card.key());
    }

    private UndoRecord move(UndoRecord record, UndoRecord.State state) throws IOException {
        Path target = doneFile(record.plan().card(), record.file(), state == UndoRecord.State.UNDONE);
        files.move(record.file(), target);
        return record.in(state, target);
    }

    private Path doneFile(CardId card, Path file, boolean undone) {
        String name = file.getFileName().toString();
        String stem = name.substring(name.indexOf(SEPARATOR) + 1)
                .replace(UNDONE_SUFFIX, "")
                .replace(SUFFIX, "");
        return doneFolder(card).resolve(stem + (undone ? UNDONE_SUFFIX : SUFFIX));
    }

    private static boolean isOpenRecord(Path file) {
        String name = file.getFileName().toString();
        return name.contains(SEPARATOR) && isRecord(name.substring(name.indexOf(SEPARATOR) + 1));
    }

    private List<UndoRecord> read(Path folder, Predicate<String> wanted, UndoRecord.State state)
            throws CardException, IOException {
        List<UndoRecord> records = new ArrayList<>();
        for (Path file : files.list(folder)) {
            String name = file.getFileName().toString();
            boolean record = state == UndoRecord.State.DONE ? isRecord(name) : isOpenRecord(file);
            if (record && wanted.test(name)) {
                read(file, state).ifPresent(records::add);
            }
        }
        records.sort(Comparator.comparing(UndoRecord::id));
        return records;
    }

    /** A record that is not whole was cut off before its change began, so it says nothing about the card. */
    private Optional<UndoRecord> read(Path file, UndoRecord.State state) throws CardException, IOException {
        boolean undone = file.getFileName().toString().endsWith(UNDONE_SUFFIX);
        try {
            return RecordFormat.read(files.read(file, RecordFormat.MOST_BYTES))
                    .map(stored -> new UndoRecord(
                            idOf(file),
                            Instant.parse(stored.created()),
                            stored.medium(),
                            stored.plan(),
                            stored.takesBack(),
                            undone ? UndoRecord.State.UNDONE : state,
                            file));
        } catch (NoSuchFileException e) {
            // Listed, then moved on: a change to another card of this make-up was finished in between.
            return Optional.empty();
        } catch (IOException | DateTimeException e) {
            throw CardException.refused(
                    "the undo record " + file + " cannot be read (" + e.getMessage() + ")",
                    "Use the version of bootmend that wrote it, or move it out of the way if it is of no use.",
                    e);
        }
    }

    private static String idOf(Path file) {
        String name = file.getFileName().toString();
        String rest = name.substring(name.indexOf(SEPARATOR) + 1);
        return rest.substring(0, rest.indexOf('.'));
    }
}
