package bootmend.gui;

import bootmend.fixtures.DemoCard;
import bootmend.fixtures.DemoCards;
import bootmend.job.Workplace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Demo cards in a folder, with a data folder of their own beside them.
 *
 * @param cards the one that will not boot first
 */
record DemoBench(Workplace workplace, List<Path> cards) {

    /** Makes what is not there yet. */
    static DemoBench in(Path folder) throws IOException {
        List<Path> cards = DemoCards.all().stream().map(DemoCard::fileName).map(folder::resolve).toList();
        if (cards.stream().noneMatch(Files::exists)) {
            DemoCards.writeAll(folder);
        }
        return new DemoBench(Workplace.ofThisComputer(folder.resolve("records")), cards);
    }
}
