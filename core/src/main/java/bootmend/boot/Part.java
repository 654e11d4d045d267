package bootmend.boot;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * What was found of a link, or of a part of one, before it is joined with others.
 *
 * @param why a clause; empty where it is whole
 * @param cause why the board goes no further; there exactly where it does not
 */
record Part(LinkState state, List<Found> found, String why, Optional<Cause> cause) {

    Part {
        found = List.copyOf(found);
    }

    static Part whole(Found... found) {
        return new Part(LinkState.WHOLE, List.of(found), "", Optional.empty());
    }

    static Part whole(List<Found> found) {
        return new Part(LinkState.WHOLE, found, "", Optional.empty());
    }

    /** Not whole, but the board goes on. */
    static Part lacking(LinkState state, String why, Found... found) {
        return new Part(state, List.of(found), why, Optional.empty());
    }

    static Part unknown(String why, Found... found) {
        return new Part(LinkState.UNKNOWN, List.of(found), why, Optional.empty());
    }

    static Part stops(LinkState state, Cause cause, Found... found) {
        String why = cause.sentence();
        return new Part(state, List.of(found), why.replaceFirst("\\.$", ""), Optional.of(cause));
    }

    boolean isStop() {
        return cause.isPresent();
    }

    /** All of these are needed. */
    static Part all(List<Part> parts) {
        Part worst = parts.stream()
                .filter(Part::isStop)
                .findFirst()
                .or(() -> first(parts, part -> part.state == LinkState.UNKNOWN))
                .or(() -> first(parts, part -> part.state != LinkState.WHOLE))
                .orElseGet(Part::whole);
        return new Part(worst.state, found(parts), worst.why, worst.cause);
    }

    /**
     * One of these is what the board comes to, and which one is not known here.
     *
     * @param dependsOn a phrase such as {@code the level of pin 4}
     */
    static Part oneOf(List<Part> parts, String dependsOn) {
        if (parts.size() == 1) {
            return parts.get(0);
        }
        Optional<Part> bad = first(parts, part -> part.isStop() || part.state == LinkState.UNKNOWN);
        if (parts.stream().allMatch(Part::isStop) || bad.isEmpty()) {
            return all(parts).withFound(found(parts));
        }
        return new Part(
                LinkState.UNKNOWN,
                found(parts),
                "it depends on " + dependsOn + "; in one case " + bad.get().why,
                Optional.empty());
    }

    private Part withFound(List<Found> all) {
        return new Part(state, all, why, cause);
    }

    private static Optional<Part> first(List<Part> parts, Predicate<Part> test) {
        return parts.stream().filter(test).findFirst();
    }

    private static List<Found> found(List<Part> parts) {
        List<Found> all = new ArrayList<>();
        parts.forEach(
                part -> part.found.stream().filter(each -> !all.contains(each)).forEach(all::add));
        return all;
    }

    BootLink link(LinkKind kind) {
        return new BootLink(kind, state, found, why, isStop());
    }
}
