package bootmend.boot;

import java.util.List;

/** What a board's boot chain comes to. */
public sealed interface Verdict {

    /** How JSON and listings say it. */
    String word();

    /**
     * The board starts, as far as the card can tell.
     *
     * @param aboveStock tuning keys whose values are not at stock, in the vocabulary's order; where there are any and
     *     the board does not start, putting them back is the next step
     */
    record Boots(List<String> aboveStock) implements Verdict {
        public Boots {
            aboveStock = List.copyOf(aboveStock);
        }

        @Override
        public String word() {
            return "boots";
        }
    }

    /** The board goes no further than the first broken link. */
    record Stops(Cause cause) implements Verdict {
        @Override
        public String word() {
            return "stops";
        }
    }

    /**
     * Whether the board starts hangs on what the card does not tell.
     *
     * @param link the first link that hangs on it
     * @param why a clause, safe to show
     */
    record Unknown(LinkKind link, String why) implements Verdict {
        @Override
        public String word() {
            return "unknown";
        }
    }
}
