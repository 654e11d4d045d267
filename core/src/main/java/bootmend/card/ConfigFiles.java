package bootmend.card;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.config.Condition;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.config.ConfigName;
import bootmend.config.ConfigReader;
import bootmend.config.FilterParser;
import bootmend.config.IncludeProblem;
import bootmend.config.IncludeSource;
import bootmend.config.LineKind;
import bootmend.config.SavedText;
import bootmend.config.VisibleText;
import bootmend.fat.BootFiles;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileContent;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Reads the config file and the files it includes, each once, however they include one another. */
public final class ConfigFiles {

    public static final String NAME = ConfigName.NAME;
    /** Larger than any config file a board was ever given; a file over it is something else under that name. */
    public static final int MAX_BYTES = 1 << 20;

    private static final int MAX_FILES = 64;
    /** How many faults are named; a bound against hostile cards. */
    private static final int MAX_WARNINGS = 64;

    private final BootFiles volume;
    private final List<ConfigFile> files = new ArrayList<>();
    private final List<String> warnings = new ArrayList<>();
    private final Set<String> named = new HashSet<>();
    /** Places of the entries read: one file may go by a long name, a short name and several spellings of its path. */
    private final Map<Long, ConfigFile> seen = new HashMap<>();
    /** The files read, by every path that names one, in lower case. */
    private final Map<String, ConfigFile> byPath = new HashMap<>();

    private ConfigFiles(BootFiles volume) {
        this.volume = volume;
    }

    /**
     * All config files of the volume, {@code config.txt} first.
     *
     * @throws CardException when there is no config file, or it cannot be taken for one
     */
    public static ConfigFiles read(BootFiles volume) throws CardException, IOException {
        return read(volume, NAME);
    }

    /** The same with another file in the place of {@code config.txt}, such as {@code tryboot.txt}. */
    public static ConfigFiles read(BootFiles volume, String name) throws CardException, IOException {
        ConfigFiles read = new ConfigFiles(volume);
        Optional<DirectoryEntry> named = volume.find(name);
        if (named.isEmpty()) {
            throw name.equals(NAME)
                    ? missing(volume)
                    : CardException.unreadable("the boot partition has no " + name, "", NextStep.Plain.SHOW_CARD);
        }
        DirectoryEntry entry = named.get();
        if (entry.folder()) {
            throw CardException.unreadable(
                    name + " is a folder on this card",
                    "A board cannot read that as its config file; rename the folder on a computer that mounts the card.");
        }
        if (entry.size() > MAX_BYTES) {
            throw CardException.unreadable(
                    name + " has " + entry.size() + " bytes; a config file has at most " + MAX_BYTES,
                    "This is no config file any more; put a copy from a healthy card in its place.");
        }
        read.add(name, entry);
        read.noteEndlessIncludes();
        return read;
    }

    private static CardException missing(BootFiles volume) throws IOException {
        String what = "the boot partition has no " + NAME;
        for (DirectoryEntry entry : volume.root().entries()) {
            if (!entry.folder() && ConfigName.isMisnamed(entry.name())) {
                return CardException.unreadable(
                        what + ", but a file named \"" + entry.name() + "\", which a board does not look for",
                        "A repair gives it its name.",
                        NextStep.Plain.REPAIR_CARD);
            }
        }
        return CardException.unreadable(
                what,
                "Boards before pi5 run at stock without one, later ones do not start. If the file was renamed by mistake, name it "
                        + NAME + " again.");
    }

    public List<ConfigFile> all() {
        return files;
    }

    public ConfigFile main() {
        return files.get(0);
    }

    /** Sentences on includes that were not followed and files that were not whole. */
    public List<String> warnings() {
        return warnings;
    }

    /** The included files as they were read, for whoever follows the config file line by line; reads no card. */
    public IncludeSource includes() {
        return name -> named(name).map(ConfigFile::bytes);
    }

    /** The path of the file that an include line names, as {@link ConfigFile#path} has it where it was read. */
    public String pathOf(String name) {
        return named(name).map(ConfigFile::path).orElse(path(name));
    }

    private Optional<ConfigFile> named(String name) {
        return Optional.ofNullable(byPath.get(path(name).toLowerCase(Locale.ROOT)));
    }

    private static String path(String name) {
        return name.replace('\\', '/').replaceFirst("^/+", "");
    }

    /** Includes that a board cannot follow to their end, whichever board it is. */
    private void noteEndlessIncludes() {
        ConfigReader.read(
                        main().path(),
                        main().document(),
                        includes(),
                        new FilterParser(Set.of()),
                        filter -> Condition.dependsOn("the board"))
                .problems()
                .stream()
                .filter(problem -> problem.kind() != IncludeProblem.Kind.MISSING)
                .map(IncludeProblem::sentence)
                .forEach(this::warning);
    }

    private void add(String path, DirectoryEntry entry) throws CardException, IOException {
        FileContent content = volume.read(entry, MAX_BYTES);
        if (content.isWhole()) {
            savedForm(path, content);
        }
        ConfigDocument document = ConfigDocument.parse(content.bytes());
        ConfigFile file = new ConfigFile(path, entry, content.bytes(), document, content.warnings());
        files.add(file);
        seen.put(entry.offset(), file);
        byPath.put(path.toLowerCase(Locale.ROOT), file);
        content.warnings().forEach(found -> warning(VisibleText.of(path) + ": " + found));
        for (ConfigLine line : document.lines()) {
            if (line.kind() instanceof LineKind.Include include) {
                include(path, line.number(), include.file());
            }
        }
    }

    /** A config file of which a board reads no line is as good as none; one in an odd form is still read, with a warning. */
    private void savedForm(String path, FileContent content) throws CardException {
        boolean main = files.isEmpty();
        for (SavedText.Problem problem : SavedText.of(content.bytes()).problems()) {
            if (main && problem == SavedText.Problem.UTF_16) {
                throw CardException.unreadable(
                        VisibleText.of(path) + ": " + problem.words(),
                        "A repair saves it as a board reads it.",
                        NextStep.Plain.REPAIR_CARD);
            }
            warning(VisibleText.of(path) + ": " + problem.words()
                    + (main ? "; a repair puts that right" : "; save it anew as plain text"));
        }
    }

    private void warning(String sentence) {
        if (warnings.size() < MAX_WARNINGS) {
            warnings.add(sentence);
        } else if (warnings.size() == MAX_WARNINGS) {
            warnings.add("the config file has more such faults than can be listed");
        }
    }

    private void include(String from, int line, String name) throws CardException, IOException {
        String path = path(name);
        if (!named.add(path.toLowerCase(Locale.ROOT))) {
            return;
        }
        String where = VisibleText.of(from) + " line " + line + " includes " + VisibleText.of(name);
        if (files.size() >= MAX_FILES) {
            warning(where + ", which was not read: " + MAX_FILES + " files are the most that are followed");
            return;
        }
        Optional<DirectoryEntry> entry = volume.find(path).filter(found -> !found.folder());
        if (entry.filter(found -> seen.containsKey(found.offset())).isPresent()) {
            byPath.put(path.toLowerCase(Locale.ROOT), seen.get(entry.get().offset()));
        } else if (entry.isEmpty()) {
            warning(where + ", which is not on the boot partition");
        } else if (entry.get().size() > MAX_BYTES) {
            warning(where + ", which was not read: it has over " + MAX_BYTES + " bytes");
        } else {
            add(path, entry.get());
        }
    }
}
