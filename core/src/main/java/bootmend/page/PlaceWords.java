package bootmend.page;

import bootmend.config.VisibleText;
import bootmend.earlier.Order;
import bootmend.earlier.Place;
import bootmend.view.TriedSettings;
import java.time.temporal.ChronoUnit;

/** Says where an earlier version was found and what is known of it; safe to show. */
public final class PlaceWords implements Place.Cases<String> {

    private PlaceWords() {}

    /** Such as {@code the file config.txt.bak}. */
    public static String of(Place place) {
        return place.match(new PlaceWords());
    }

    /** One word for each kind of place. */
    public static String kind(Place place) {
        return place.match(new Kinds());
    }

    private record Kinds() implements Place.Cases<String> {

        @Override
        public String copy(Place.Copy place) {
            return "copy";
        }

        @Override
        public String swap(Place.Swap place) {
            return "swap";
        }

        @Override
        public String deleted(Place.Deleted place) {
            return "deleted";
        }

        @Override
        public String free(Place.Free place) {
            return "free";
        }

        @Override
        public String record(Place.Recorded place) {
            return "record";
        }
    }

    @Override
    public String copy(Place.Copy place) {
        return "the file " + VisibleText.of(place.path());
    }

    @Override
    public String swap(Place.Swap place) {
        return "the swap file " + VisibleText.of(place.path());
    }

    @Override
    public String deleted(Place.Deleted place) {
        return "the deleted file " + VisibleText.of(place.name()) + ", cluster " + place.cluster();
    }

    @Override
    public String free(Place.Free place) {
        return "free clusters, from " + place.cluster() + " on";
    }

    @Override
    public String record(Place.Recorded place) {
        return "the undo record of " + place.when().truncatedTo(ChronoUnit.SECONDS) + " ("
                + VisibleText.of(place.title()) + ")";
    }

    /** What orders a version, and how sure that is. */
    public static String of(Order order) {
        String sure = order.certain() ? "certain, by " : "likely, by ";
        return switch (order.by()) {
            case RECORDS -> sure + "the undo records of changes to this card";
            case TIMES -> sure + "the times that were written with the files";
            case CLUSTERS -> sure + "where its clusters lie";
            case NOTHING -> "not known";
        };
    }

    /** What a trial or a profile says. */
    public static String of(TriedSettings tried) {
        String outcome =
                switch (tried.outcome()) {
                    case KNOWN_GOOD -> "known-good";
                    case HELD -> "held";
                    case FAILED -> "failed";
                    case THROTTLED -> "throttled";
                    case UNPROVEN -> "unproven";
                };
        String who = tried.source() == TriedSettings.Source.TRIAL
                ? "trial " + VisibleText.of(tried.name()) + " on " + VisibleText.of(tried.label()) + " ("
                        + tried.board() + ")"
                : "profile " + VisibleText.of(tried.name()) + " (" + tried.board() + ")";
        return outcome + ": " + who;
    }
}
