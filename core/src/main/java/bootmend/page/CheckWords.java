package bootmend.page;

import bootmend.finding.Finding;
import bootmend.finding.Purpose;
import bootmend.finding.Severity;
import bootmend.view.CheckView;
import java.util.List;

/** How a check's outcome is said, on every screen and page alike; text from a card is still to be made visible. */
public final class CheckWords {

    private CheckWords() {}

    /** One sentence on whether the card is ready for its purpose. */
    public static String verdict(CheckView view) {
        String counts = Amount.count(view.count(Severity.BLOCKER), "blocker") + ", "
                + Amount.count(view.count(Severity.WARNING), "warning") + ", "
                + Amount.count(view.count(Severity.NOTE), "note");
        return (view.hasBlocker() ? "Not ready " : "Ready ") + purpose(view.purpose())
                + (view.hasBlocker() ? ": " : ", as far as the card itself shows: ") + counts + ".";
    }

    /** What a card is checked for, such as {@code to ship}. */
    public static String purpose(Purpose purpose) {
        return switch (purpose) {
            case SHIP -> "to ship";
            case FIRMWARE_UPDATE -> "for a firmware update";
            case STABILITY_RUN -> "for a stability run";
        };
    }

    /** The boards that a card was checked for. */
    public static String boards(CheckView view) {
        if (view.boards().isEmpty()) {
            return "none: nothing on it tells a board";
        }
        return String.join(" ", view.boards()) + (view.boardsGiven() ? "" : " (every board that it can be meant for)");
    }

    /** The boards that a finding holds for, with a blank in front; nothing where it holds for all or none matters. */
    public static String boards(Finding finding, List<String> all) {
        return finding.boards().isEmpty() || finding.boards().equals(all)
                ? ""
                : " [" + String.join(" ", finding.boards()) + "]";
    }
}
