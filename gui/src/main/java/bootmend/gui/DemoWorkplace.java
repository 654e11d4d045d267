package bootmend.gui;

import bootmend.CardException;
import bootmend.fixtures.DemoCard;
import bootmend.fixtures.DemoCards;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Demo cards in a folder, with a data folder of their own beside them that holds trials and profiles.
 *
 * @param cards the one that will not boot first
 */
public record DemoWorkplace(Workplace workplace, List<Path> cards) {

    private static final int CART = 2;
    private static final int MAST = 3;

    /** Makes what is not there yet. */
    public static DemoWorkplace in(Path folder) throws CardException, IOException {
        List<Path> cards = DemoCards.all().stream()
                .map(DemoCard::fileName)
                .map(folder::resolve)
                .toList();
        boolean fresh = cards.stream().noneMatch(Files::exists);
        if (fresh) {
            DemoCards.writeAll(folder);
        }
        Workplace workplace = Workplace.ofThisComputer(folder.resolve("records"));
        if (fresh && !Files.exists(workplace.home())) {
            new DemoRecords(workplace).add(cards.get(CART), cards.get(MAST));
        }
        return new DemoWorkplace(workplace, cards);
    }
}
