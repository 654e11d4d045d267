package bootmend.cli.run;

import bootmend.CardException;
import bootmend.request.CardRequest;
import bootmend.view.KeepJob;
import bootmend.view.KeepView;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;

/** Keeps a card's files before a change is begun: the card is not held yet, for one card must not be open twice. */
final class CopyFirst {

    private static final int MOST_NAMES = 10_000;

    private final Workplace workplace;
    private final Path place;

    /** @param place the file, or, for several cards, the folder that gets one for each */
    CopyFirst(Workplace workplace, Path place) {
        this.workplace = workplace;
        this.place = place;
    }

    KeepView keep(CardRequest card) throws CardException {
        return new KeepJob(workplace).run(card, place, false);
    }

    /** In the folder, by the card's own name and a number where that is taken. */
    KeepView keepInFolder(CardRequest card) throws CardException {
        try {
            Files.createDirectories(place);
        } catch (IOException e) {
            throw CardException.refused(
                    place + " could not be made (" + e.getMessage() + ")",
                    "Of several cards the files are kept in a folder; name one.",
                    e);
        }
        Path name = card.card().getFileName();
        String stem = name == null ? "card" : name.toString().replaceAll("[^A-Za-z0-9._-]", "_");
        for (int i = 1; i < MOST_NAMES; i++) {
            Path file = place.resolve(stem + (i == 1 ? "" : "-" + i) + ".zip");
            if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
                return new KeepJob(workplace).run(card, file, false);
            }
        }
        throw CardException.refused("every name for a copy in " + place + " is taken", "Name another folder.");
    }
}
