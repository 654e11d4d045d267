package bootmend.boot;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * What was found of a link, or of a part of one, before it is joined with others.
 *
 * @param at what the state is about; empty where it is nothing in particular
 * @param why a clause; empty where it is whole
 * @param cause why the board goes no further; there exactly where it does not
 */
record ChainPart(LinkState state, Optional<Found> at, List<Found> found, String why, Optional<Cause> cause) {

    ChainPart {
        found = List.copyOf(found);
    }

    static ChainPart whole(Found... found) {
        return whole(List.of(found));
    }

    static ChainPart whole(List<Found> found) {
        return new ChainPart(LinkState.WHOLE, found.stream().findFirst(), found, "", Optional.empty());
    }

    /** Not whole, but the board goes on. */
    static ChainPart lacking(LinkState state, String why, Found... found) {
        List<Found> marked = marked(state, found);
        return new ChainPart(state, marked.stream().findFirst(), marked, why, Optional.empty());
    }

    static ChainPart unknown(String why, Found... found) {
        return lacking(LinkState.UNKNOWN, why, found);
    }

    static ChainPart stops(LinkState state, Cause cause, Found... found) {
        String why = cause.sentence();
        List<Found> marked = marked(state, found);
        return new ChainPart(
                state, marked.stream().findFirst(), marked, why.replaceFirst("\\.$", ""), Optional.of(cause));
    }

    private static List<Found> marked(LinkState state, Found... found) {
        return Arrays.stream(found).map(each -> each.as(state)).toList();
    }

    boolean isStop() {
        return cause.isPresent();
    }

    /** All of these are needed. */
    static ChainPart all(List<ChainPart> parts) {
        ChainPart worst = parts.stream()
                .filter(ChainPart::isStop)
                .findFirst()
                .or(() -> first(parts, part -> part.state == LinkState.UNKNOWN))
                .or(() -> first(parts, part -> part.state != LinkState.WHOLE))
                .orElseGet(ChainPart::whole);
        return new ChainPart(worst.state, worst.at, found(parts), worst.why, worst.cause);
    }

    /**
     * One of these is what the board comes to, and which one is not known here.
     *
     * @param dependsOn a phrase such as {@code the level of pin 4}
     */
    static ChainPart oneOf(List<ChainPart> parts, String dependsOn) {
        if (parts.size() == 1) {
            return parts.get(0);
        }
        Optional<ChainPart> bad = first(parts, part -> part.isStop() || part.state == LinkState.UNKNOWN);
        if (parts.stream().allMatch(ChainPart::isStop) || bad.isEmpty()) {
            return all(parts).withFound(found(parts));
        }
        return new ChainPart(
                LinkState.UNKNOWN,
                bad.get().at,
                found(parts),
                "it depends on " + dependsOn + "; in one case " + bad.get().why,
                Optional.empty());
    }

    private ChainPart withFound(List<Found> all) {
        return new ChainPart(state, at, all, why, cause);
    }

    private static Optional<ChainPart> first(List<ChainPart> parts, Predicate<ChainPart> test) {
        return parts.stream().filter(test).findFirst();
    }

    private static List<Found> found(List<ChainPart> parts) {
        List<Found> all = new ArrayList<>();
        parts.forEach(
                part -> part.found.stream().filter(each -> !all.contains(each)).forEach(all::add));
        return all;
    }

    BootLink link(LinkKind kind) {
        return new BootLink(kind, state, at, found, why, isStop());
    }
}
