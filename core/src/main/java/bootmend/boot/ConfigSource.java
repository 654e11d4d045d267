package bootmend.boot;

import bootmend.config.ConfigDocument;
import bootmend.config.ConfigName;
import bootmend.config.IncludeSource;
import bootmend.config.SavedText;
import bootmend.config.VisibleText;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileContent;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.Resolution;
import bootmend.tuning.resolve.Resolver;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The config file of a boot partition as it was read once, and what it includes as far as a board asks.
 *
 * @param name the name that the board looks for
 * @param entry the file; empty where there is none that can be one
 * @param document its lines; none where there is no file
 * @param problem what is wrong with it
 * @param includes where included files come from
 */
record ConfigSource(
        String name,
        Optional<DirectoryEntry> entry,
        ConfigDocument document,
        Optional<Problem> problem,
        IncludeSource includes) {

    /** What keeps a board from reading the file as it was meant. */
    record Problem(LinkState state, String sentence, Origin origin, Remedy remedy) {}

    /** Larger than any config file a board was ever given. */
    private static final int MOST_BYTES = 1 << 20;

    private static final int MOST_INCLUDES = 64;
    private static final int MOST_NULS_SHOWN = 4096;

    static ConfigSource read(BootFolder folder, String name) throws IOException {
        Optional<DirectoryEntry> entry = folder.entry(name);
        IncludeSource includes = includes(folder);
        if (entry.isEmpty()) {
            return new ConfigSource(name, entry, empty(), missing(folder, name), includes);
        }
        if (entry.get().folder()) {
            return new ConfigSource(
                    name,
                    Optional.empty(),
                    empty(),
                    Optional.of(new Problem(
                            LinkState.MISSING,
                            name + " is a folder, which no board reads as its config file",
                            Origin.WRONG_EDIT,
                            new Remedy.PutFiles(List.of(name)))),
                    includes);
        }
        FileContent content = folder.read(entry.get(), MOST_BYTES);
        return new ConfigSource(
                name, entry, ConfigDocument.parse(content.bytes()), problem(name, entry.get(), content), includes);
    }

    private static ConfigDocument empty() {
        return ConfigDocument.parse(new byte[0]);
    }

    private static Optional<Problem> missing(BootFolder folder, String name) throws IOException {
        if (!name.equals(ConfigName.NAME)) {
            return Optional.of(new Problem(
                    LinkState.MISSING, "there is no " + name, Origin.NOT_KNOWN, new Remedy.PutFiles(List.of(name))));
        }
        for (String other : folder.names("")) {
            if (ConfigName.isMisnamed(other)) {
                return Optional.of(new Problem(
                        LinkState.MISSING,
                        "there is no config.txt, but a file named \"" + VisibleText.of(other)
                                + "\", which no board looks for",
                        Origin.WRONG_EDIT,
                        new Remedy.RenameFile(other, ConfigName.NAME)));
            }
        }
        return Optional.of(new Problem(
                LinkState.MISSING,
                "there is no config.txt",
                Origin.INCOMPLETE_COPY,
                new Remedy.PutFiles(List.of(ConfigName.NAME))));
    }

    private static Optional<Problem> problem(String name, DirectoryEntry entry, FileContent content) {
        if (entry.size() > MOST_BYTES) {
            return Optional.of(new Problem(
                    LinkState.DAMAGED,
                    name + " has " + entry.size() + " bytes, more than any config file",
                    Origin.NOT_KNOWN,
                    new Remedy.PutFiles(List.of(name))));
        }
        if (!content.isWhole()) {
            return Optional.of(new Problem(
                    LinkState.DAMAGED,
                    name + " cannot be read to its end: " + content.warnings().get(0),
                    Origin.CUT_WRITE,
                    new Remedy.RepairCard()));
        }
        if (SavedText.of(content.bytes()).problems().contains(SavedText.Problem.UTF_16)) {
            return Optional.of(new Problem(
                    LinkState.DAMAGED,
                    name + ": " + SavedText.Problem.UTF_16.words(),
                    Origin.WRONG_EDIT,
                    new Remedy.SavePlain(name)));
        }
        for (int i = 0; i < Math.min(content.bytes().length, MOST_NULS_SHOWN); i++) {
            if (content.bytes()[i] == 0) {
                return Optional.of(new Problem(
                        LinkState.DAMAGED,
                        name + " holds zero bytes, which no text for a board holds",
                        Origin.CUT_WRITE,
                        new Remedy.PutFiles(List.of(name))));
            }
        }
        return Optional.empty();
    }

    /** Reads each included file when a board first comes to its line, and keeps it for the next board. */
    private static IncludeSource includes(BootFolder folder) {
        Map<String, Optional<byte[]>> kept = new HashMap<>();
        return name -> kept.computeIfAbsent(name, wanted -> {
            if (kept.size() >= MOST_INCLUDES) {
                return Optional.empty();
            }
            try {
                Optional<DirectoryEntry> entry = folder.file(wanted);
                return entry.isEmpty() || entry.get().size() > MOST_BYTES
                        ? Optional.empty()
                        : Optional.of(folder.read(entry.get(), MOST_BYTES).bytes());
            } catch (IOException e) {
                return Optional.empty();
            }
        });
    }

    /** What the file comes to on a board. */
    Resolution on(BoardFacts facts, Resolver resolver) {
        return resolver.resolve(name, document, includes, facts);
    }

    /** Clauses on forms that a board may not read, without stopping it. */
    List<String> oddForms() {
        List<String> odd = new ArrayList<>();
        SavedText.of(document.toBytes()).problems().stream()
                .filter(each -> each != SavedText.Problem.UTF_16)
                .forEach(each -> odd.add(each.words()));
        return odd;
    }
}
