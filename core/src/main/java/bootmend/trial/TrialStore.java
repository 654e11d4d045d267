package bootmend.trial;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.device.DurableFile;
import bootmend.store.YamlFile;
import bootmend.tuning.TuningTables;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ThreadLocalRandom;

/**
 * The trials on this computer: one YAML file each in {@code trials/} of bootmend's data folder. A trial's id is its
 * file's name, so a file may be renamed or copied by hand.
 */
public final class TrialStore {

    private static final String SUFFIX = ".yaml";
    private static final int MAX_FILES = 1_000_000;
    private static final int MAX_SLUG = 24;
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final Comparator<Trial> ORDER =
            Comparator.comparing(Trial::when).thenComparing(Trial::id);

    private final Path folder;
    private final Path bin;
    private final TrialFile format;

    /** @param home bootmend's data folder; made when the first trial is kept */
    public TrialStore(Path home, TuningTables tables) {
        this.folder = home.resolve("trials");
        this.bin = folder.resolve("deleted");
        this.format = new TrialFile(tables);
    }

    /**
     * What is in the store.
     *
     * @param trials those that could be read, oldest first
     * @param problems one for each file that could not be
     */
    public record Content(List<Trial> trials, List<CardException> problems) {

        public Content {
            trials = List.copyOf(trials);
            problems = List.copyOf(problems);
        }

        /** @throws CardException if a file could not be read: a failed trial might be the one that is missing */
        public List<Trial> whole() throws CardException {
            if (!problems.isEmpty()) {
                throw problems.get(0);
            }
            return trials;
        }
    }

    /** Every trial; a file that is none becomes a problem that names it and the line. */
    public Content read() throws CardException {
        return read(folder);
    }

    /** Every trial that was deleted, in the same way. */
    public Content deleted() throws CardException {
        return read(bin);
    }

    private Content read(Path from) throws CardException {
        List<Trial> trials = new ArrayList<>();
        List<CardException> problems = new ArrayList<>();
        for (Path file : files(from)) {
            try {
                trials.add(format.read(idOf(file), YamlFile.read(file)));
            } catch (CardException e) {
                problems.add(e);
            }
        }
        trials.sort(ORDER);
        return new Content(trials, problems);
    }

    /** The trial of that id, or the one whose id alone ends so after a hyphen. */
    public Trial find(String id) throws CardException {
        Path file = named(folder, id, CardException.usage("there is no trial " + id, "", NextStep.Plain.LIST_TRIALS));
        return format.read(idOf(file), YamlFile.read(file));
    }

    /** What of an id is enough to name it, where it was given by this store: the sign after the last hyphen. */
    public static String shortId(Trial trial) {
        String id = trial.id();
        String end = id.substring(id.lastIndexOf('-') + 1);
        return id.startsWith("trial") && end.matches("[0-9a-f]{8}") ? end : id;
    }

    private static Path named(Path folder, String id, CardException missing) throws CardException {
        Path file = folder.resolve(checked(id) + SUFFIX);
        if (Files.isRegularFile(file)) {
            return file;
        }
        List<Path> ending = files(folder).stream()
                .filter(each -> idOf(each).endsWith("-" + id))
                .toList();
        if (ending.size() > 1) {
            throw CardException.usage(
                    ending.size() + " trials end in " + id,
                    "Say the whole name of its file.",
                    NextStep.Plain.LIST_TRIALS);
        }
        if (ending.isEmpty()) {
            throw missing;
        }
        return ending.get(0);
    }

    /** Keeps a trial; gives it back with its id. */
    public Trial add(Trial trial) throws CardException {
        String id = slug(trial.unit().label()) + "-" + STAMP.format(trial.when()) + "-"
                + HexFormat.of().toHexDigits(ThreadLocalRandom.current().nextInt());
        Trial kept = trial.withId(id);
        write(kept);
        return kept;
    }

    /** Keeps a trial in the place of the one with its id. */
    public void replace(Trial trial) throws CardException {
        if (!Files.isRegularFile(file(trial))) {
            throw CardException.usage("there is no trial " + trial.id(), "", NextStep.Plain.LIST_TRIALS);
        }
        write(trial);
    }

    private void write(Trial trial) throws CardException {
        try {
            Files.createDirectories(folder);
            DurableFile.replace(file(trial), TrialFile.write(trial));
        } catch (IOException e) {
            throw CardException.refused(
                    "the trial could not be written to " + folder + " (" + e + ")",
                    "Make room or take another data folder, then try again.",
                    e,
                    NextStep.Plain.SET_DATA_FOLDER);
        }
    }

    /** Puts a trial's file aside, whatever it holds; {@link #restore} undoes it. */
    public void delete(String id) throws CardException {
        move(folder, bin, id, CardException.usage("there is no trial " + id, "", NextStep.Plain.LIST_TRIALS));
    }

    /** Puts a deleted trial's file back. */
    public void restore(String id) throws CardException {
        move(
                bin,
                folder,
                id,
                CardException.usage("there is no deleted trial " + id, "", NextStep.Plain.LIST_DELETED_TRIALS));
    }

    private static void move(Path from, Path to, String id, CardException missing) throws CardException {
        Path file = named(from, id, missing);
        Path target = to.resolve(file.getFileName());
        try {
            Files.createDirectories(to);
            if (Files.exists(target)) {
                throw CardException.refused(
                        target + " is there already and was left alone", "Move one of the two files away by hand.");
            }
            Files.move(file, target, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            throw CardException.refused(
                    file + " could not be moved to " + to + " (" + e.getMessage() + ")",
                    "Check your right to write to both folders.",
                    e);
        }
    }

    /** Only a file's name is taken, so that none leads out of the folder. */
    private static String checked(String id) throws CardException {
        boolean plain = !id.isEmpty()
                && !id.startsWith(".")
                && id.chars()
                        .noneMatch(sign -> sign == '/' || sign == '\\' || sign == ':' || Character.isISOControl(sign));
        if (!plain) {
            throw CardException.usage("a trial cannot be named so", "", NextStep.Plain.LIST_TRIALS);
        }
        return id;
    }

    /** Where a trial of this store is kept. */
    public Path file(Trial trial) {
        return folder.resolve(trial.id() + SUFFIX);
    }

    /** Where a deleted trial of this store is kept. */
    public Path deletedFile(Trial trial) {
        return bin.resolve(trial.id() + SUFFIX);
    }

    private static List<Path> files(Path folder) throws CardException {
        List<Path> files = new ArrayList<>();
        try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder, "[!.]*" + SUFFIX)) {
            for (Path file : stream) {
                if (files.size() == MAX_FILES) {
                    throw CardException.unreadable(
                            folder + " has more than " + MAX_FILES + " trials",
                            "Move those of boards that are gone to another folder.");
                }
                files.add(file);
            }
        } catch (NoSuchFileException e) {
            return files;
        } catch (IOException e) {
            throw CardException.unreadable(
                    folder + " cannot be read (" + e.getMessage() + ")", "Check its rights and the disk it is on.", e);
        }
        files.sort(Comparator.naturalOrder());
        return files;
    }

    private static String idOf(Path file) {
        String name = file.getFileName().toString();
        return name.substring(0, name.length() - SUFFIX.length());
    }

    /** What of a label may stand in a file's name on every system; a label itself is never part of a path. */
    private static String slug(String label) {
        String plain =
                label.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-+", "");
        String cut = plain.substring(0, Math.min(MAX_SLUG, plain.length())).replaceAll("-+$", "");
        return "trial" + (cut.isEmpty() ? "" : "-" + cut);
    }
}
