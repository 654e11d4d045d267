package bootmend.change;

import bootmend.config.ConfigName;
import bootmend.config.SavedText;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fat.FileContent;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The config file of a volume, or the one file that may be meant to be it, and what an editor did to its name and form.
 *
 * @param file the file that is or is meant to be the config file, nothing where none or several could be
 * @param misnamed whether it has another name
 * @param text how it is saved, nothing where it was not read whole
 * @param findings what is to be mended, as yet unmended
 */
record ConfigLook(Optional<DirectoryEntry> file, boolean misnamed, Optional<Saved> text, List<RepairFinding> findings) {

    /** Larger than any config file a board was ever given; a file over it is something else under that name. */
    private static final int MAX_BYTES = 1 << 20;

    private static final String NAME_ID = "config-misnamed";

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
        List<RepairFinding> findings = new ArrayList<>();
        if (misnamed) {
            findings.add(new RepairFinding(
                    NAME_ID,
                    file.name(),
                    file.name().equalsIgnoreCase(ConfigName.NAME)
                            ? "its name is not written as a board's documents write it, " + ConfigName.NAME
                            : "a board looks for " + ConfigName.NAME + " and does not find it",
                    false));
        }
        FileContent content = volume.read(file, MAX_BYTES);
        if (!content.isWhole()) {
            return new ConfigLook(Optional.of(file), misnamed, Optional.empty(), findings);
        }
        SavedText saved = SavedText.of(content.bytes());
        for (SavedText.Problem problem : saved.problems()) {
            findings.add(new RepairFinding(problem.id(), file.name(), problem.words(), false));
        }
        return new ConfigLook(
                Optional.of(file), misnamed, saved.mended().map(after -> new Saved(content.bytes(), after)), findings);
    }

    private static List<RepairFinding> unclear(List<DirectoryEntry> named, List<DirectoryEntry> meant) {
        if (!named.isEmpty() || meant.size() < 2) {
            return List.of();
        }
        return List.of(new RepairFinding(
                NAME_ID,
                ConfigName.NAME,
                "there is none, and several files may be meant to be " + "it ("
                        + String.join(
                                ", ", meant.stream().map(DirectoryEntry::name).toList()) + ")",
                false));
    }
}
