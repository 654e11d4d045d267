package bootmend.boot;

import java.util.List;
import java.util.Optional;

/**
 * One link of a board's boot chain.
 *
 * @param at what the state is about; empty where it is nothing in particular
 * @param found what it rests on, in the order looked at
 * @param why a clause on why it is so, safe to show
 * @param stops whether the board goes no further: a link may be missing without that
 */
public record BootLink(
        LinkKind kind, LinkState state, Optional<Found> at, List<Found> found, String why, boolean stops) {

    public BootLink {
        found = List.copyOf(found);
    }
}
