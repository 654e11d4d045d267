package bootmend.gui.model;

import bootmend.CardException;
import bootmend.gui.LabRecords;
import bootmend.gui.SmallCards;
import bootmend.gui.text.Words;
import bootmend.view.SheetLine;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** A desk whose work is done at once, with a data folder of its own. */
final class TuningDesk {

    final Path folder;
    final Workplace workplace;
    final DeskModel desk;

    TuningDesk(Path folder) {
        this.folder = folder;
        this.workplace = Workplace.ofThisComputer(folder.resolve("home"));
        this.desk = new DeskModel(
                new Services(
                        workplace,
                        new WorkQueue(Runnable::run, Runnable::run),
                        Runnable::run,
                        new Words(Locale.ENGLISH)),
                List::of,
                WindowSettings.load(folder.resolve("window.properties")));
    }

    /** The same, with the lab's trials and profiles. */
    static TuningDesk filled(Path folder) throws CardException, IOException {
        TuningDesk desk = new TuningDesk(folder);
        LabRecords.fill(desk.workplace, folder);
        return desk;
    }

    /** Looks at a new card. */
    CardModel look(String name, String config) throws IOException {
        desk.look(SmallCards.write(folder, name, config));
        return card();
    }

    CardModel card() {
        return desk.current().get().orElseThrow();
    }

    /** The config file of the card that is looked at, as it was read last. */
    String config() {
        return card().sheet().get().value().orElseThrow().files().get(0).lines().stream()
                .map(SheetLine::text)
                .collect(Collectors.joining("\n"));
    }

    void board(String id) {
        card().setBoard(Optional.of(id));
    }
}
