package bootmend.cli.text;

import bootmend.page.Amount;
import bootmend.view.CompareView;
import java.util.List;
import java.util.Optional;

/** Prints how two cards, profiles or config files differ. */
public final class ComparePage {

    private static final String STOCK = "stock";
    private static final String NOTHING = "-";
    /** How many files are listed; the JSON document has all. */
    private static final int MOST_FILES = 40;

    private final Screen screen;

    public ComparePage(Screen screen) {
        this.screen = screen;
    }

    public void print(CompareView view) {
        if (view.isSame()) {
            screen.line(
                    "bold",
                    view.left() + " and " + view.right()
                            + (view.sameConfig()
                                    ? " have the same config file."
                                    : " come to the same on every board that was compared."));
        }
        for (CompareView.OnBoards each : view.boards()) {
            screen.line("bold", "On " + String.join(" ", each.boards()) + ":");
            settings("tuning", each.tuning(), STOCK, view);
            settings("other", each.other(), NOTHING, view);
            screen.blank();
        }
        files(view);
        if (!view.isSame() && view.boards().isEmpty()) {
            screen.line(
                    view.sameConfig()
                            ? "The config file is the same."
                            : "The config files come to the same on every board that was compared.");
        }
        view.notes().forEach(note -> screen.line("Note: " + note));
    }

    private void settings(String kind, List<CompareView.Setting> settings, String none, CompareView view) {
        if (!settings.isEmpty()) {
            screen.table(
                    List.of(kind, view.left(), view.right()),
                    settings.stream()
                            .map(each -> List.of(
                                    each.key(),
                                    each.left().orElse(none),
                                    each.right().orElse(none)))
                            .toList());
        }
    }

    private void files(CompareView view) {
        if (view.files().isEmpty()) {
            return;
        }
        screen.line("bold", "Files that differ:");
        screen.table(
                List.of("file", view.left(), view.right()),
                view.files().stream()
                        .limit(MOST_FILES)
                        .map(each -> List.of(each.path(), size(each.left()), size(each.right(), each)))
                        .toList());
        if (view.files().size() > MOST_FILES) {
            screen.line("and " + Amount.count(view.files().size() - MOST_FILES, "file") + " more");
        }
        screen.blank();
    }

    private static String size(Optional<Long> bytes) {
        return bytes.map(Amount::size).orElse("missing");
    }

    private static String size(Optional<Long> bytes, CompareView.OfFile file) {
        return file.left().equals(file.right()) ? "other content" : size(bytes);
    }
}
