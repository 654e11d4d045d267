package bootmend.card;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.config.ConfigDocument;
import bootmend.fat.DirectoryEntry;
import java.util.List;

/**
 * The config file, or one that it includes, as it was read.
 *
 * @param path from the boot partition's root, parts separated by {@code /}
 * @param warnings sentences on what could not be read of it
 */
public record ConfigFile(
        String path, DirectoryEntry entry, byte[] bytes, ConfigDocument document, List<String> warnings) {

    /** @throws CardException where a part of it could not be read, and so must not be written back */
    public void refuseWhenNotWhole() throws CardException {
        if (!warnings.isEmpty()) {
            throw CardException.refused(
                    path + " could not be read whole (" + warnings.get(0) + ")", "", NextStep.Plain.REPAIR_CARD);
        }
    }
}
