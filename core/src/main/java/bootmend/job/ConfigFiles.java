package bootmend.job;

import bootmend.CardException;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.config.ConfigName;
import bootmend.config.LineKind;
import bootmend.config.SavedText;
import bootmend.config.VisibleText;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fat.FileContent;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.HashSet;

/** Reads the config file and the files it includes, each once, however they include one another. */
final class ConfigFiles {

    static final String NAME = ConfigName.NAME;
    /** Larger than any config file a board was ever given; a file over it is something else under that name. */
    static final int MAX_BYTES = 1 << 20;
    private static final int MAX_FILES = 64;

    private final FatVolume volume;
    private final List<ConfigFile> files = new ArrayList<>();
    private final List<String> doubts = new ArrayList<>();
    private final Set<String> named = new HashSet<>();
    /** Places of the entries read: one file may go by a long name, a short name and several spellings of its path. */
    private final Set<Long> seen = new HashSet<>();

    private ConfigFiles(FatVolume volume) {
        this.volume = volume;
    }

    /**
     * All config files of the volume, {@code config.txt} first.
     *
     * @throws CardException when there is no config file, or it cannot be taken for one
     */
    static ConfigFiles read(FatVolume volume) throws IOException {
        ConfigFiles read = new ConfigFiles(volume);
        Optional<DirectoryEntry> named = volume.find(NAME);
        if (named.isEmpty()) {
            throw missing(volume);
        }
        DirectoryEntry entry = named.get();
        if (entry.folder()) {
            throw CardException.unreadable(NAME + " is a folder on this card",
                    "A board cannot read that as its config file; rename the folder on a computer that mounts the card.");
        }
        if (entry.size() > MAX_BYTES) {
            throw CardException.unreadable(NAME + " has " + entry.size() + " bytes; a config file has at most "
                    + MAX_BYTES, "This is no config file any more; put a copy from a healthy card in its place.");
        }
        read.add(NAME, entry);
        return read;
    }

    private static CardException missing(FatVolume volume) throws IOException {
        String what = "the boot partition has no " + NAME;
        for (DirectoryEntry entry : volume.root().entries()) {
            if (!entry.folder() && ConfigName.isMisnamed(entry.name())) {
                return CardException.unreadable(what + ", but a file named \"" + entry.name()
                        + "\", which a board does not look for",
                        "Run `bootmend repair` on the card to give it its name.");
            }
        }
        return CardException.unreadable(what,
                "A board without one runs at stock; if the file was renamed by mistake, name it " + NAME + " again.");
    }

    List<ConfigFile> all() {
        return files;
    }

    ConfigFile main() {
        return files.get(0);
    }

    /** Sentences on includes that were not followed and files that were not whole. */
    List<String> doubts() {
        return doubts;
    }

    private void add(String path, DirectoryEntry entry) throws IOException {
        FileContent content = volume.read(entry, MAX_BYTES);
        if (content.isWhole()) {
            savedForm(path, content);
        }
        ConfigDocument document = ConfigDocument.parse(content.bytes());
        files.add(new ConfigFile(path, entry, content.bytes(), document, content.doubts()));
        seen.add(entry.offset());
        content.doubts().forEach(doubt -> doubts.add(VisibleText.of(path) + ": " + doubt));
        for (ConfigLine line : document.lines()) {
            if (line.kind() instanceof LineKind.Include include) {
                include(path, line.number(), include.file());
            }
        }
    }

    /** A config file of which a board reads no line is as good as none; one in an odd form is still read, with a doubt. */
    private void savedForm(String path, FileContent content) throws CardException {
        boolean main = files.isEmpty();
        for (SavedText.Problem problem : SavedText.of(content.bytes()).problems()) {
            if (main && problem == SavedText.Problem.UTF_16) {
                throw CardException.unreadable(VisibleText.of(path) + ": " + problem.words(),
                        "Run `bootmend repair` on the card to save it as a board reads it.");
            }
            doubts.add(VisibleText.of(path) + ": " + problem.words()
                    + (main ? "; `bootmend repair` mends that" : "; save it anew as plain text"));
        }
    }

    private void include(String from, int line, String name) throws IOException {
        String path = name.replace('\\', '/').replaceFirst("^/+", "");
        if (!named.add(path.toLowerCase(Locale.ROOT))) {
            return;
        }
        String where = VisibleText.of(from) + " line " + line + " includes " + VisibleText.of(name);
        if (files.size() >= MAX_FILES) {
            doubts.add(where + ", which was not read: " + MAX_FILES + " files are the most that are followed");
            return;
        }
        Optional<DirectoryEntry> entry = volume.find(path).filter(found -> !found.folder());
        if (entry.filter(found -> seen.contains(found.offset())).isPresent()) {
            return;
        }
        if (entry.isEmpty()) {
            doubts.add(where + ", which is not on the boot partition");
        } else if (entry.get().size() > MAX_BYTES) {
            doubts.add(where + ", which was not read: it has over " + MAX_BYTES + " bytes");
        } else {
            add(path, entry.get());
        }
    }
}
