package bootmend.card;

import bootmend.CardException;
import bootmend.change.FileChange;
import bootmend.change.History;
import bootmend.change.UndoRecord;
import bootmend.config.ConfigName;
import bootmend.earlier.EarlierSearch;
import bootmend.earlier.EarlierVersions;
import bootmend.earlier.Place;
import bootmend.earlier.PresentFile;
import bootmend.earlier.RecordedVersion;
import bootmend.earlier.SearchProgress;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Looks for earlier versions of an open card's config file, on the card and in this computer's undo records. */
public final class CardEarlier {

    private final Workplace workplace;

    public CardEarlier(Workplace workplace) {
        this.workplace = workplace;
    }

    /** All that is found; a card without a config file may have had one. */
    public EarlierVersions of(OpenCard card, SearchProgress progress) throws CardException, IOException {
        Optional<FatVolume> volume = card.volume() instanceof FatVolume open ? Optional.of(open) : Optional.empty();
        return new EarlierSearch(
                        workplace.tables(), card.volume(), volume, present(card, volume.isPresent()), included(card))
                .run(records(card), progress);
    }

    /** The config file as it is; empty where there is none, or it cannot be one. */
    public Optional<PresentFile> present(OpenCard card) throws IOException {
        return present(card, card.volume() instanceof FatVolume);
    }

    private static Optional<PresentFile> present(OpenCard card, boolean clusters) throws IOException {
        Optional<DirectoryEntry> entry =
                card.volume().root().find(ConfigName.NAME).filter(file -> !file.folder());
        if (entry.isEmpty() || entry.get().size() > ConfigFiles.MAX_BYTES) {
            return Optional.empty();
        }
        return Optional.of(new PresentFile(
                card.volume().read(entry.get(), ConfigFiles.MAX_BYTES).bytes(),
                clusters ? entry.get().firstCluster() : 0,
                entry.get().written()));
    }

    /** Files that the config file includes are no versions of it. */
    private static List<byte[]> included(OpenCard card) throws IOException {
        try {
            return ConfigFiles.read(card.volume()).all().stream()
                    .skip(1)
                    .map(ConfigFile::bytes)
                    .toList();
        } catch (CardException e) {
            return List.of();
        }
    }

    private List<RecordedVersion> records(OpenCard card) throws CardException, IOException {
        List<UndoRecord> proven = card.history(workplace.store()).oldestFirst();
        Set<String> ids = new HashSet<>();
        proven.forEach(record -> ids.add(record.id()));
        List<UndoRecord> all = new ArrayList<>(proven);
        for (UndoRecord record : History.onMedium(card.target(), workplace.store())) {
            if (!ids.contains(record.id())) {
                all.add(record);
            }
        }
        all.sort((a, b) -> b.id().compareTo(a.id()));
        List<RecordedVersion> versions = new ArrayList<>();
        for (UndoRecord record : all) {
            for (FileChange file : record.plan().files()) {
                if (file.path().equalsIgnoreCase(ConfigName.NAME)) {
                    Place.Recorded place = new Place.Recorded(
                            record.id(), record.created(), record.plan().title());
                    versions.add(new RecordedVersion(place, file.before(), file.after(), ids.contains(record.id())));
                }
            }
        }
        return versions;
    }
}
