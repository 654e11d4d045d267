package bootmend.change;

import bootmend.Sentence;
import bootmend.config.ConfigName;
import bootmend.config.SavedText;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fat.FileContent;
import bootmend.finding.Finding;
import bootmend.finding.Fix;
import bootmend.finding.Place;
import bootmend.finding.Purpose;
import bootmend.finding.Rule;
import bootmend.finding.Severity;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The config file of a volume, or the one file that may be meant to be it, and what an editor did to its name and form.
 *
 * @param file the file that is or is meant to be the config file, nothing where none or several could be
 * @param misnamed whether it has another name
 * @param text how it is saved, nothing where it was not read whole
 * @param findings what is to be repaired, as yet unrepaired
 */
record ConfigLook(Optional<DirectoryEntry> file, boolean misnamed, Optional<Saved> text, List<Finding> findings) {

    /** Larger than any config file a board was ever given; a file over it is something else under that name. */
    private static final int MAX_BYTES = 1 << 20;

    private static final Rule MISNAMED = Rule.of(
            "config-misnamed",
            Map.of(
                    Purpose.SHIP, Severity.BLOCKER,
                    Purpose.FIRMWARE_UPDATE, Severity.WARNING,
                    Purpose.STABILITY_RUN, Severity.BLOCKER),
            Fix.REPAIR,
            "A board that does not find the file starts with none of its settings.");

    /** A config file's bytes as they stand and as a board would read them. */
    record Saved(byte[] before, byte[] after) {}

    ConfigLook {
        findings = List.copyOf(findings);
    }

    static ConfigLook at(FatVolume volume) throws IOException {
        List<DirectoryEntry> entries = volume.root().entries();
        List<DirectoryEntry> named =
                entries.stream().filter(entry -> entry.isNamed(ConfigName.NAME)).toList();
        if (named.size() == 1 && canBe(named.get(0))) {
            boolean oddCase = !named.get(0).longNameOffsets().isEmpty()
                    && !named.get(0).name().equals(ConfigName.NAME);
            return of(volume, named.get(0), oddCase);
        }
        List<DirectoryEntry> meant = entries.stream()
                .filter(entry -> ConfigName.isMisnamed(entry.name()) && canBe(entry))
                .toList();
        if (named.isEmpty() && meant.size() == 1) {
            return of(volume, meant.get(0), true);
        }
        return new ConfigLook(Optional.empty(), false, Optional.empty(), unclear(named, meant));
    }

    private static boolean canBe(DirectoryEntry entry) {
        return !entry.folder() && entry.size() <= MAX_BYTES;
    }

    private static ConfigLook of(FatVolume volume, DirectoryEntry file, boolean misnamed) throws IOException {
        List<Finding> findings = new ArrayList<>();
        if (misnamed) {
            findings.add(Finding.of(
                    MISNAMED,
                    Place.file(file.name()),
                    Sentence.of(
                            file.name().equalsIgnoreCase(ConfigName.NAME)
                                    ? "its name is not written as a board's documents write it, " + ConfigName.NAME
                                    : "a board looks for " + ConfigName.NAME + " and does not find it")));
        }
        FileContent content = volume.read(file, MAX_BYTES);
        if (!content.isWhole()) {
            return new ConfigLook(Optional.of(file), misnamed, Optional.empty(), findings);
        }
        SavedText saved = SavedText.of(content.bytes());
        for (SavedText.Problem problem : saved.problems()) {
            findings.add(Finding.of(rule(problem), Place.file(file.name()), Sentence.of(problem.words())));
        }
        return new ConfigLook(
                Optional.of(file),
                misnamed,
                saved.repaired().map(after -> new Saved(content.bytes(), after)),
                findings);
    }

    private static Rule rule(SavedText.Problem problem) {
        Severity severity = problem == SavedText.Problem.UTF_16 ? Severity.BLOCKER : Severity.WARNING;
        return Rule.of(
                problem.id(),
                Rule.always(severity),
                Fix.REPAIR,
                "The board may start with other settings than the file seems to give.");
    }

    private static List<Finding> unclear(List<DirectoryEntry> named, List<DirectoryEntry> meant) {
        if (!named.isEmpty() || meant.size() < 2) {
            return List.of();
        }
        return List.of(Finding.of(
                        MISNAMED,
                        Place.file(ConfigName.NAME),
                        Sentence.of("there is none, and several files may be meant to be " + "it ("
                                + String.join(
                                        ", ",
                                        meant.stream().map(DirectoryEntry::name).toList()) + ")"))
                .fixedBy(Fix.DECISION));
    }
}
