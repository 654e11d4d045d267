package bootmend.gui.model;

import bootmend.view.AttachedCard;
import java.nio.file.Path;

/**
 * One card in the list of cards.
 *
 * @param title what a user knows it by
 * @param bytes its size; 0 where nobody looked
 * @param note why it is not taken for a boot card, as a clause; empty where it is, or nobody looked
 */
public record CardEntry(Path path, Group group, String title, long bytes, String note) {

    /** Where a card comes from. */
    public enum Group {
        /** It is attached to this computer. */
        READER,
        /** It was opened or dropped here since the window was. */
        OPENED,
        /** It was looked at before. */
        EARLIER
    }

    static CardEntry file(Path path, Group group) {
        Path name = path.getFileName();
        return new CardEntry(path, group, name == null ? path.toString() : name.toString(), 0, "");
    }

    static CardEntry reader(AttachedCard card) {
        return new CardEntry(
                Path.of(card.path()),
                Group.READER,
                card.model().isBlank() ? card.path() : card.model(),
                card.bytes(),
                card.boot() == AttachedCard.Boot.YES ? "" : card.words());
    }
}
