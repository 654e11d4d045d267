package bootmend.change;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.device.DurableFile;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ThreadLocalRandom;

/**
 * The undo records on this computer: {@code open/} holds those of changes not known to be finished, {@code done/} a
 * folder for each card's others. A record's state is where it lies and what its name ends in, so that changing the
 * state is one rename.
 *
 * <p>Of a card's finished records the newest hundred are always kept, and all of the last 365 days.
 */
public final class UndoStore {

    /** Between the card's key and the record's id in the name of an open record. */
    private static final String SEPARATOR = "_";

    private static final String SUFFIX = ".undo";
    private static final String TAKEN_BACK_SUFFIX = ".taken-back.undo";

    /** A card keeps at least this many records, whatever their age. */
    private static final int KEPT_RECORDS = 100;
    /** A record is kept at least this long, however many there are. */
    private static final int KEPT_DAYS = 365;

    private final Path home;
    /** The latest stamp given to each card in this run. */
    private final Map<CardId, String> latest = new ConcurrentHashMap<>();
    /** Cards whose records were looked through in this run; once is enough. */
    private final Set<CardId> pruned = ConcurrentHashMap.newKeySet();

    /** @param home bootmend's data folder; made when the first record is */
    public UndoStore(Path home) {
        this.home = home;
    }

    /**
     * Writes the record of a change that is about to begin and forces it, and the folder it is in, to this computer's
     * disk.
     */
    UndoRecord open(Plan plan, String cardPath, String takesBack, Instant now) throws CardException {
        byte[] bytes = RecordFormat.write(now, cardPath, takesBack, plan);
        try {
            Path folder = Files.createDirectories(openFolder());
            Path file = writeNew(folder, plan.card().key() + SEPARATOR + nextStamp(plan.card(), now), bytes);
            checkReadsBack(file, plan);
            return new UndoRecord(idOf(file), now, cardPath, plan, takesBack, UndoRecord.State.OPEN, file);
        } catch (IOException e) {
            throw CardException.refused(
                    "the undo record could not be written to " + home + " (" + e + ")",
                    "Nothing was changed on the card. Make room, or take another data folder.",
                    e,
                    NextStep.Plain.SET_DATA_FOLDER);
        }
    }

    /** A stamp after every other of this card, even where the computer's clock went back since. */
    private String nextStamp(CardId card, Instant now) throws IOException {
        if (!latest.containsKey(card)) {
            latest.putIfAbsent(card, newestStamp(doneFolder(card)));
        }
        return latest.compute(card, (same, known) -> max(RecordStamp.of(now), RecordStamp.after(known)));
    }

    private static String newestStamp(Path folder) throws IOException {
        String newest = "";
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*" + SUFFIX)) {
            for (Path file : files) {
                newest = max(newest, file.getFileName().toString());
            }
        } catch (NoSuchFileException e) {
            return newest;
        }
        return newest.substring(0, Math.min(RecordStamp.LENGTH, newest.length()));
    }

    private static String max(String a, String b) {
        return a.compareTo(b) >= 0 ? a : b;
    }

    /** Notes that the change was written, forced and read back. */
    UndoRecord finish(UndoRecord open) throws IOException {
        UndoRecord done = move(open, UndoRecord.State.DONE);
        if (pruned.add(open.plan().card())) {
            prune(done.file().getParent());
        }
        return done;
    }

    /** Drops what is both beyond the newest {@value #KEPT_RECORDS} of a card and over a year old. */
    private static void prune(Path folder) throws IOException {
        List<Path> files = new ArrayList<>();
        try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder, "*" + SUFFIX)) {
            stream.forEach(files::add);
        }
        files.sort(Comparator.comparing((Path file) -> file.getFileName().toString())
                .reversed());
        Instant limit = Instant.now().minus(KEPT_DAYS, ChronoUnit.DAYS);
        for (Path file : files.subList(Math.min(KEPT_RECORDS, files.size()), files.size())) {
            if (Files.getLastModifiedTime(file).toInstant().isBefore(limit)) {
                Files.deleteIfExists(file);
            }
        }
    }

    /** Notes that a change which was done is now taken back. */
    void markTakenBack(UndoRecord done) throws IOException {
        move(done, UndoRecord.State.TAKEN_BACK);
    }

    /** Notes that the change with this id is taken back, where it is known here. */
    void markTakenBack(String id, CardId card) throws CardException, IOException {
        for (UndoRecord record : doneFor(card)) {
            if (record.id().equals(id) && record.state() == UndoRecord.State.DONE) {
                markTakenBack(record);
            }
        }
    }

    /** Notes that a change which was not done is off the card again; its record is kept. */
    UndoRecord closeTakenBack(UndoRecord open) throws IOException {
        return move(open, UndoRecord.State.TAKEN_BACK);
    }

    /** Records of changes to such a card that are not known to be finished, oldest first. */
    List<UndoRecord> openFor(CardId card) throws CardException, IOException {
        return read(openFolder(), card.key() + SEPARATOR + "*" + SUFFIX, UndoRecord.State.OPEN);
    }

    /** Records of finished changes to such a card, newest first. */
    public List<UndoRecord> doneFor(CardId card) throws CardException, IOException {
        List<UndoRecord> records = new ArrayList<>(read(doneFolder(card), "*" + SUFFIX, UndoRecord.State.DONE));
        records.sort(Comparator.comparing(UndoRecord::id).reversed());
        return records;
    }

    /** A record that could not be read again would be no way back, so it is read before anything is written. */
    private static void checkReadsBack(Path file, Plan plan) throws IOException {
        boolean whole = RecordFormat.read(Files.readAllBytes(file))
                .filter(stored -> stored.plan().writesTheSameAs(plan))
                .isPresent();
        if (!whole) {
            throw new IOException("it does not read back as it was written");
        }
    }

    private Path openFolder() {
        return home.resolve("open");
    }

    private Path doneFolder(CardId card) {
        return home.resolve("done").resolve(card.key());
    }

    private UndoRecord move(UndoRecord record, UndoRecord.State state) throws IOException {
        Path folder = Files.createDirectories(doneFolder(record.plan().card()));
        String suffix = state == UndoRecord.State.TAKEN_BACK ? TAKEN_BACK_SUFFIX : SUFFIX;
        Path target = folder.resolve(record.id() + suffix);
        DurableFile.move(record.file(), target);
        return new UndoRecord(
                record.id(), record.created(), record.cardPath(), record.plan(), record.takesBack(), state, target);
    }

    /** The name's random end keeps records apart that begin in the same moment, here or in another process. */
    private static Path writeNew(Path folder, String stem, byte[] bytes) throws IOException {
        String end = HexFormat.of().toHexDigits(ThreadLocalRandom.current().nextInt());
        Path file = folder.resolve(stem + "-" + end + SUFFIX);
        DurableFile.create(file, bytes);
        return file;
    }

    private static List<UndoRecord> read(Path folder, String glob, UndoRecord.State state)
            throws CardException, IOException {
        List<UndoRecord> records = new ArrayList<>();
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, glob)) {
            for (Path file : files) {
                read(file, state).ifPresent(records::add);
            }
        } catch (NoSuchFileException e) {
            return records;
        }
        records.sort(Comparator.comparing(UndoRecord::id));
        return records;
    }

    /** A record that is not whole was cut off before its change began, so it says nothing about the card. */
    private static Optional<UndoRecord> read(Path file, UndoRecord.State state) throws CardException, IOException {
        boolean takenBack = file.getFileName().toString().endsWith(TAKEN_BACK_SUFFIX);
        try {
            return RecordFormat.read(Files.readAllBytes(file))
                    .map(stored -> new UndoRecord(
                            idOf(file),
                            Instant.parse(stored.created()),
                            stored.cardPath(),
                            stored.plan(),
                            stored.takesBack(),
                            takenBack ? UndoRecord.State.TAKEN_BACK : state,
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
        String suffix = name.endsWith(TAKEN_BACK_SUFFIX) ? TAKEN_BACK_SUFFIX : SUFFIX;
        return name.substring(name.indexOf(SEPARATOR) + 1, name.length() - suffix.length());
    }
}
