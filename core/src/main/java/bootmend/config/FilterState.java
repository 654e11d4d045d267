package bootmend.config;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The filters in force at one place of a config file; immutable.
 *
 * <p>Filters of one type replace each other, filters of different types hold together. Where the source does not say
 * which of the two it is (a model and a board type, two pins, two boot variables, {@code [none]} or an unknown
 * filter and any other), both readings are kept: only what both agree on is told, the rest depends.
 *
 * @param replacing filters in force if every unclear pair replaces; all of them are in {@code together} too
 * @param together filters in force if every unclear pair holds together
 */
record FilterState(List<Filter> replacing, List<Filter> together) {

    /** How many filters are kept at once. No source: a bound against hostile cards. */
    static final int MAX_FILTERS = 16;

    static final FilterState EMPTY = new FilterState(List.of(), List.of());

    /** The state below a section line. */
    FilterState with(Filter filter) {
        if (filter instanceof Filter.All) {
            return EMPTY;
        }
        List<Filter> afterReplacing = Stream.concat(
                        replacing.stream().filter(older -> !isReplaced(older, filter) && !mayBeReplaced(older, filter)),
                        Stream.of(filter))
                .toList();
        List<Filter> afterTogether = Stream.concat(
                        together.stream().filter(older -> !isReplaced(older, filter)), Stream.of(filter))
                .toList();
        if (afterTogether.size() > MAX_FILTERS) {
            List<Filter> bounded = List.of(new Filter.Unknown("so many filters at once"), filter);
            return new FilterState(bounded, bounded);
        }
        return new FilterState(afterReplacing, afterTogether);
    }

    /** Whether lines here count. */
    Condition on(FilterFacts facts) {
        Condition some = all(replacing, facts);
        Condition every = all(together, facts);
        if (some.truth() == every.truth()) {
            return every;
        }
        // Every mixture of the two readings lies between them, so agreement of the two is agreement of all.
        String unclear = together.stream()
                .filter(filter -> !replacing.contains(filter))
                .map(Filter::text)
                .collect(Collectors.joining(" ", "whether ", " still holds under the later filter, no source tells"));
        return Condition.dependsOnAll(Stream.of(Condition.dependsOn(unclear), some, every));
    }

    /** Whether {@code [none]} is in force in every reading. */
    boolean isNone() {
        for (Filter filter : replacing) {
            if (filter instanceof Filter.None) {
                return true;
            }
        }
        return false;
    }

    private static Condition all(List<Filter> filters, FilterFacts facts) {
        return filters.stream().map(filter -> test(filter, facts)).reduce(Condition.HOLDS, Condition::and);
    }

    private static Condition test(Filter filter, FilterFacts facts) {
        if (filter instanceof Filter.None) {
            return Condition.FAILS;
        }
        if (filter instanceof Filter.Unknown unknown) {
            return Condition.dependsOn("what the board makes of " + unknown.text());
        }
        return facts.test(filter);
    }

    private static boolean isReplaced(Filter older, Filter newer) {
        if (older instanceof Filter.Pin oldPin && newer instanceof Filter.Pin newPin) {
            return oldPin.pin() == newPin.pin();
        }
        if (older instanceof Filter.BootVariable oldVariable && newer instanceof Filter.BootVariable newVariable) {
            return oldVariable.name().equals(newVariable.name());
        }
        return older.getClass() == newer.getClass();
    }

    private static boolean mayBeReplaced(Filter older, Filter newer) {
        boolean sameForm = older.getClass() == newer.getClass();
        boolean bothModels = older instanceof Filter.Model && newer instanceof Filter.BoardType
                || older instanceof Filter.BoardType && newer instanceof Filter.Model;
        return sameForm || bothModels || isUnclear(older) || isUnclear(newer);
    }

    private static boolean isUnclear(Filter filter) {
        return filter instanceof Filter.None || filter instanceof Filter.Unknown;
    }
}
