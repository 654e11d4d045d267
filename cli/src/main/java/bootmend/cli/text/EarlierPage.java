package bootmend.cli.text;

import bootmend.page.Amount;
import bootmend.page.PlaceWords;
import bootmend.view.EarlierVersionView;
import bootmend.view.EarlierView;
import bootmend.view.SettingChange;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Prints what a card's config file was before. */
public final class EarlierPage {

    private static final int FEW = 20;
    private static final int SHOWN_OF_HASH = 12;
    private static final int NAME = 10;
    private static final int INDENT = 4;

    private final Screen screen;
    private final String card;

    public EarlierPage(Screen screen, String card) {
        this.screen = screen;
        this.card = card;
    }

    /** @param all whether every version is printed rather than the newest twenty */
    public void print(EarlierView view, boolean all) {
        now(view);
        int shown = all ? view.versions().size() : Math.min(FEW, view.versions().size());
        for (EarlierVersionView version : view.versions().subList(0, shown)) {
            screen.blank();
            print(version);
        }
        screen.blank();
        end(view, shown);
    }

    private void now(EarlierView view) {
        screen.paragraph("card", NAME, view.card());
        if (view.now().isEmpty()) {
            screen.paragraph("now", NAME, "there is no config file that can be read");
            return;
        }
        EarlierView.Present now = view.now().get();
        screen.paragraph("now", NAME, bytes(now.text().length) + ", sha256 " + hash(now.sha256()));
        screen.paragraph("", NAME, settings(now.settings()));
        now.tried().forEach(tried -> screen.paragraph("", NAME, PlaceWords.of(tried)));
    }

    private void print(EarlierVersionView view) {
        screen.line(
                "bold",
                String.format("%-" + INDENT + "s", view.n() + ".")
                        + (view.beforeNow()
                                ? "the one before now: "
                                : view.version().newer() ? "newer than now: " : "")
                        + (view.version().whole() ? "whole" : "in part") + ", "
                        + bytes(view.version().text().length)
                        + ", sha256 " + hash(view.sha256()));
        row("tuning", settings(view.settings()));
        row("differs", differences(view));
        row("found in", found(view));
        row(
                "order",
                PlaceWords.of(view.version().order())
                        + view.version()
                                .written()
                                .map(time -> "; written " + time.toString().replace('T', ' '))
                                .orElse(""));
        view.tried().forEach(tried -> row("tried", PlaceWords.of(tried)));
    }

    private static String found(EarlierVersionView view) {
        int others = view.version().places().size() - 1;
        return PlaceWords.of(view.version().places().get(0))
                + (others > 0 ? ", and " + Amount.count(others, "other place") : "");
    }

    private void row(String name, String text) {
        screen.paragraph(" ".repeat(INDENT) + name, INDENT + NAME, text);
    }

    private static String bytes(int count) {
        return Amount.count(count, "byte");
    }

    private static String hash(String sha256) {
        return sha256.substring(0, SHOWN_OF_HASH);
    }

    private static String settings(Map<String, String> settings) {
        return settings.isEmpty()
                ? "no tuning lines"
                : settings.entrySet().stream()
                        .map(setting -> setting.getKey() + "=" + setting.getValue())
                        .collect(Collectors.joining("  "));
    }

    private static String differences(EarlierVersionView view) {
        List<String> texts = new ArrayList<>();
        view.changes().forEach(change -> texts.add(text(change)));
        if (view.otherLines() > 0) {
            texts.add(Amount.count(view.otherLines(), "other line"));
        }
        return texts.isEmpty() ? "only in how lines end" : String.join(", ", texts);
    }

    private static String text(SettingChange change) {
        String key = (change.section().isEmpty() ? "" : change.section() + " ") + change.key();
        return key
                + change.then().map(value -> "=" + value).orElse(" not set")
                + change.now().map(value -> " (now " + value + ")").orElse(" (now not set)");
    }

    private void end(EarlierView view, int shown) {
        if (view.versions().isEmpty()) {
            screen.line("No earlier version of the config file was found.");
        }
        if (shown < view.versions().size()) {
            screen.line("And " + Amount.count(view.versions().size() - shown, "older version")
                    + ": bootmend earlier --all " + card);
        }
        if (view.mounted()) {
            screen.line("Of a mounted folder only its files are seen. For deleted files and free clusters, unmount the "
                    + "card and name the reader's device, or an image of the card.");
        } else if (!view.complete()) {
            screen.line("The free space was not searched to its end; there may be more.");
        }
        if (view.dropped() > 0) {
            screen.line(Amount.count(view.dropped(), "text") + " more looked like a config file and were left out.");
        }
        view.beforeNow()
                .ifPresent(version -> screen.line(
                        "Its tuning back as it was before: bootmend reset " + card + " --to-earlier " + version.n()));
        view.lastGood()
                .filter(version -> !version.beforeNow())
                .ifPresent(version -> screen.line(
                        "The last that held in a trial: bootmend reset " + card + " --to-earlier " + version.n()));
        if (!view.knownGood().isEmpty()) {
            screen.line("Known-good here: bootmend reset " + card + " --to "
                    + view.knownGood().get(0)
                    + (view.knownGood().size() > 1
                            ? " (also "
                                    + String.join(
                                            ", ",
                                            view.knownGood()
                                                    .subList(1, view.knownGood().size())) + ")"
                            : ""));
        }
        if (!view.versions().isEmpty()) {
            screen.line("The whole file rather than its tuning: add --whole. The text of one: bootmend earlier " + card
                    + " --text N");
        }
    }
}
