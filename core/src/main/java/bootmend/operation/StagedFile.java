package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.config.ConfigName;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileContent;
import java.io.IOException;
import java.util.Optional;

/**
 * The file with settings for one try that lies on a card.
 *
 * @param bytes its content, whole
 */
record StagedFile(DirectoryEntry entry, byte[] bytes) {

    static final String NAME = ConfigName.TRY_ONCE;

    /** @throws CardException where there is something of that name that is no config file */
    static Optional<StagedFile> on(OpenCard card) throws CardException, IOException {
        Optional<DirectoryEntry> entry = card.volume().find(NAME);
        if (entry.isEmpty()) {
            return Optional.empty();
        }
        FileContent content = card.volume().read(entry.get(), ConfigFiles.MAX_BYTES);
        if (entry.get().folder() || entry.get().size() > ConfigFiles.MAX_BYTES || !content.isWhole()) {
            throw CardException.refused(
                    NAME + " on this card cannot be read as a config file",
                    "Have the card examined for damage, or remove the file by hand.",
                    NextStep.Plain.REPAIR_CARD);
        }
        return Optional.of(new StagedFile(entry.get(), content.bytes()));
    }

    /** @throws CardException where nothing is staged */
    static StagedFile needed(OpenCard card) throws CardException, IOException {
        return on(card).orElseThrow(() ->
                CardException.refused("no settings are staged on this card", "", NextStep.Plain.STAGE_SETTINGS));
    }
}
