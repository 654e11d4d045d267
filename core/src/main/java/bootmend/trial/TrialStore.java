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
    private static final int MAX_FILES = 10_000;
    private static final int MAX_SLUG = 24;
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final Comparator<Trial> ORDER =
            Comparator.comparing(Trial::when).thenComparing(Trial::id);

    private final Path folder;
    private final TrialFile format;

    /** @param home bootmend's data folder; made when the first trial is kept */
    public TrialStore(Path home, TuningTables tables) {
        this.folder = home.resolve("trials");
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
        List<Trial> trials = new ArrayList<>();
        List<CardException> problems = new ArrayList<>();
        for (Path file : files()) {
            try {
                trials.add(format.read(idOf(file), YamlFile.read(file)));
            } catch (CardException e) {
                problems.add(e);
            }
        }
        trials.sort(ORDER);
        return new Content(trials, problems);
    }

    /** Keeps a trial; gives it back with its id. */
    public Trial add(Trial trial) throws CardException {
        String id = slug(trial.unit().label()) + "-" + STAMP.format(trial.when()) + "-"
                + HexFormat.of().toHexDigits(ThreadLocalRandom.current().nextInt());
        Trial kept = trial.withId(id);
        try {
            Files.createDirectories(folder);
            DurableFile.replace(file(kept), TrialFile.write(kept));
        } catch (IOException e) {
            throw CardException.refused(
                    "the trial could not be written to " + folder + " (" + e + ")",
                    "Make room or take another data folder, then try again.",
                    e,
                    NextStep.Plain.SET_DATA_FOLDER);
        }
        return kept;
    }

    /** Where a trial of this store is kept. */
    public Path file(Trial trial) {
        return folder.resolve(trial.id() + SUFFIX);
    }

    private List<Path> files() throws CardException {
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
