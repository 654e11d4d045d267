package bootmend.cli.json;

import bootmend.earlier.Place;
import bootmend.page.PlaceWords;
import bootmend.view.EarlierVersionView;
import bootmend.view.EarlierView;
import bootmend.view.SettingChange;
import bootmend.view.TriedSettings;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The answer to {@code earlier} as a JSON document.
 *
 * @param complete whether all of the free space was searched
 * @param searchedBytes of free clusters
 * @param knownGoodProfiles names of known-good profiles for the boards that the card can be for
 */
public record EarlierJson(
        String card,
        Optional<NowJson> now,
        List<VersionJson> versions,
        List<String> knownGoodProfiles,
        boolean complete,
        long searchedBytes) {

    /** The config file as it is. */
    record NowJson(int bytes, String sha256, Map<String, String> settings, List<TriedJson> tried) {}

    /** One version; {@code written} in local time as FAT keeps it. */
    record VersionJson(
            int n,
            String found,
            List<PlaceJson> places,
            boolean whole,
            int bytes,
            String sha256,
            boolean beforeNow,
            boolean newerThanNow,
            String order,
            String orderedBy,
            Optional<String> written,
            Map<String, String> settings,
            List<ChangeJson> changes,
            int otherLines,
            List<TriedJson> tried) {

        static VersionJson of(EarlierVersionView view) {
            List<Place> places = view.version().places();
            return new VersionJson(
                    view.n(),
                    PlaceWords.of(places.get(0)),
                    places.stream().map(PlaceJson::of).toList(),
                    view.version().whole(),
                    view.version().text().length,
                    view.sha256(),
                    view.beforeNow(),
                    view.version().newer(),
                    view.version().order().certain() ? "certain" : "likely",
                    word(view.version().order().by()),
                    view.version().written().map(Object::toString),
                    view.settings(),
                    view.changes().stream().map(ChangeJson::of).toList(),
                    view.otherLines(),
                    view.tried().stream().map(TriedJson::of).toList());
        }
    }

    /** Where a version was found. */
    record PlaceJson(String kind, String where) {

        static PlaceJson of(Place place) {
            return new PlaceJson(PlaceWords.kind(place), PlaceWords.of(place));
        }
    }

    /** A tuning line that differs from now. */
    record ChangeJson(String section, String key, Optional<String> then, Optional<String> now) {

        static ChangeJson of(SettingChange change) {
            return new ChangeJson(change.section(), change.key(), change.then(), change.now());
        }
    }

    /** What a trial or a profile says of the settings. */
    record TriedJson(String source, String name, String board, String label, String outcome) {

        static TriedJson of(TriedSettings tried) {
            return new TriedJson(
                    word(tried.source()), tried.name(), tried.board(), tried.label(), word(tried.outcome()));
        }
    }

    private static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public static EarlierJson of(EarlierView view) {
        return new EarlierJson(
                view.card(),
                view.now()
                        .map(now -> new NowJson(
                                now.text().length,
                                now.sha256(),
                                now.settings(),
                                now.tried().stream().map(TriedJson::of).toList())),
                view.versions().stream().map(VersionJson::of).toList(),
                view.knownGood(),
                view.complete(),
                view.searched());
    }
}
