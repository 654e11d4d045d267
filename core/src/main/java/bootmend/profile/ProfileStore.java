package bootmend.profile;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.device.DurableFile;
import bootmend.store.YamlFile;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/** The profiles on this computer, one YAML file each. */
public final class ProfileStore {

    private static final String SUFFIX = ".yaml";
    private static final String NAME = "[a-z0-9][a-z0-9._-]{0,62}";
    /** Names that one of the desktop systems keeps for devices, whatever comes after the dot. */
    private static final Set<String> DEVICE_NAMES =
            Set.of("con", "prn", "aux", "nul", "com1", "com2", "com3", "com4", "lpt1", "lpt2", "lpt3");

    private final Path folder;

    /** @param folder made when the first profile is saved */
    public ProfileStore(Path folder) {
        this.folder = folder;
    }

    /** Saves a profile under its name. */
    public Path save(Profile profile, boolean replace) throws CardException {
        Path file = file(profile.name());
        if (Files.exists(file) && !replace) {
            throw CardException.refused(
                    "there is a profile " + profile.name() + " already",
                    "Choose another name, or replace it.",
                    NextStep.Allow.REPLACE);
        }
        try {
            Files.createDirectories(folder);
            DurableFile.replace(file, ProfileFile.write(profile));
            return file;
        } catch (IOException e) {
            throw CardException.refused(
                    "the profile could not be written to " + file + " (" + e.getMessage() + ")",
                    "Make room, or take another data folder.",
                    e,
                    NextStep.Plain.SET_DATA_FOLDER);
        }
    }

    /** The profile of that name. */
    public Profile load(String name) throws CardException {
        return read(fileOf(name)).withName(name);
    }

    /** The file of the profile of that name. */
    public Path fileOf(String name) throws CardException {
        Path file = file(name);
        if (!Files.isRegularFile(file)) {
            throw CardException.usage("there is no profile " + name, "", NextStep.Plain.LIST_PROFILES);
        }
        return file;
    }

    /** Reads a profile from any file, as it was exported. */
    public static Profile read(Path file) throws CardException {
        return ProfileFile.read(YamlFile.read(file));
    }

    /** Every profile's name, in order. */
    public List<String> names() throws CardException {
        List<String> names = new ArrayList<>();
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "*" + SUFFIX)) {
            for (Path file : files) {
                String name = file.getFileName().toString();
                names.add(name.substring(0, name.length() - SUFFIX.length()));
            }
        } catch (NoSuchFileException e) {
            return names;
        } catch (IOException e) {
            throw CardException.unreadable(
                    folder + " could not be read (" + e.getMessage() + ")", "Check your right to read it.", e);
        }
        names.sort(Comparator.naturalOrder());
        return names;
    }

    /** Deletes the profile of that name. */
    public void delete(String name) throws CardException {
        try {
            Files.delete(file(name));
        } catch (NoSuchFileException e) {
            throw CardException.usage("there is no profile " + name, "", NextStep.Plain.LIST_PROFILES);
        } catch (IOException e) {
            throw CardException.refused(
                    "the profile " + name + " could not be deleted (" + e.getMessage() + ")",
                    "Check your right to write to " + folder + ".",
                    e);
        }
    }

    /** Only plain names are taken, so none can lead out of the folder. */
    private Path file(String name) throws CardException {
        String stem = name.contains(".") ? name.substring(0, name.indexOf('.')) : name;
        if (!name.matches(NAME) || DEVICE_NAMES.contains(stem)) {
            throw CardException.usage(
                    "a profile cannot be named \"" + name + "\"",
                    "Use lower-case letters, digits, dots, hyphens and underscores, 63 at most, a letter or digit first.");
        }
        return folder.resolve(name + SUFFIX);
    }
}
