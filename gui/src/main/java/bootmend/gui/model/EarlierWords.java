package bootmend.gui.model;

import bootmend.gui.text.Words;
import bootmend.page.PlaceWords;
import bootmend.view.EarlierVersionView;
import bootmend.view.SettingChange;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Says what is known of an earlier version. */
public record EarlierWords(Words words) {

    private static final int SHOWN_OF_HASH = 12;

    /** Such as {@code 1: the one before now}. */
    public String title(EarlierVersionView view) {
        if (view.beforeNow()) {
            return words.of("earlier.title.before", view.n());
        }
        return words.of(view.version().newer() ? "earlier.title.newer" : "earlier.title.older", view.n());
    }

    /** Short enough for a choice. */
    public String choice(EarlierVersionView view) {
        return words.of("earlier.choice", view.n(), settings(view.settings()));
    }

    /** Key and value of each tuning line. */
    public String settings(Map<String, String> settings) {
        return settings.isEmpty()
                ? words.of("earlier.untuned")
                : settings.entrySet().stream()
                        .map(setting -> setting.getKey() + "=" + setting.getValue())
                        .collect(Collectors.joining("  "));
    }

    /** What its tuning lines were and are now, each in a few words. */
    public List<String> changes(EarlierVersionView view) {
        return view.changes().stream().map(this::change).toList();
    }

    private String change(SettingChange change) {
        String key = (change.section().isEmpty() ? "" : change.section() + " ") + change.key();
        String unset = words.of("earlier.unset");
        return words.of(
                "earlier.change", key, change.then().orElse(unset), change.now().orElse(unset));
    }

    /** Where it was found and what orders it. */
    public String origin(EarlierVersionView view) {
        return words.of(
                "earlier.origin",
                PlaceWords.of(view.version().places().get(0)),
                PlaceWords.of(view.version().order()),
                view.version().text().length,
                view.sha256().substring(0, SHOWN_OF_HASH));
    }
}
