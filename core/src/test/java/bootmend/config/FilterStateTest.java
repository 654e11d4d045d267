package bootmend.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Source: "Conditional filters", config_txt/conditional.adoc, commits 23cc7a36 and 3e67d54c. */
class FilterStateTest {

    private static final List<String> SECTIONS = List.of(
            "[all]",
            "[none]",
            "[pi3]",
            "[pi4]",
            "[board-type=0x11]",
            "[board-type=0x08]",
            "[0x00000001]",
            "[gpio4=1]",
            "[gpio4=0]",
            "[gpio5=1]",
            "[tryboot]",
            "[partition=2]",
            "[boot_count>3]",
            "[HDMI:0]");

    private final FilterParser parser = new FilterParser(Set.of("pi3", "pi4"));

    /**
     * What is told for sure is so under every way to settle what the source leaves open: for each unclear pair of
     * filters separately, replace or hold together; and for each fact that is not known, either answer.
     */
    @Property(tries = 400)
    void noReadingContradictsWhatIsTold(
            @ForAll("sections") List<String> sections,
            @ForAll("known") Set<String> known,
            @ForAll("chances") List<Boolean> chances) {
        FilterState state = FilterState.EMPTY;
        List<Filter> settled = new ArrayList<>();
        Chances next = new Chances(chances);
        for (String section : sections) {
            Filter filter = parser.parse(section);
            state = state.with(filter);
            settle(settled, filter, next);
        }

        Set<Filter> holding = new HashSet<>();
        known.forEach(text -> holding.add(parser.parse(text)));
        Truth told = state.on(filter -> filter instanceof Filter.Hdmi || filter instanceof Filter.Pin
                        ? Condition.dependsOn("it")
                        : Condition.of(holding.contains(filter)))
                .truth();
        boolean one = settled.stream().allMatch(filter -> !(filter instanceof Filter.None) && holding.contains(filter));

        assertThat(told).isIn(Truth.UNKNOWN, Truth.of(one));
    }

    private static void settle(List<Filter> inForce, Filter newer, Chances chances) {
        if (newer instanceof Filter.All) {
            inForce.clear();
            return;
        }
        inForce.removeIf(older -> surelySameType(older, newer) || chances.next() && maybeSameType(older, newer));
        inForce.add(newer);
    }

    private static boolean surelySameType(Filter older, Filter newer) {
        if (older instanceof Filter.Pin left && newer instanceof Filter.Pin right) {
            return left.pin() == right.pin();
        }
        if (older instanceof Filter.BootVariable left && newer instanceof Filter.BootVariable right) {
            return left.name().equals(right.name());
        }
        return older.getClass().equals(newer.getClass());
    }

    private static boolean maybeSameType(Filter older, Filter newer) {
        Set<Class<?>> models = Set.of(Filter.Model.class, Filter.BoardType.class);
        return older instanceof Filter.None
                || newer instanceof Filter.None
                || older.getClass().equals(newer.getClass())
                || models.contains(older.getClass()) && models.contains(newer.getClass());
    }

    @Example
    void withoutSectionsEveryLineCounts() {
        assertThat(on("pi4").truth()).isEqualTo(Truth.TRUE);
    }

    @Example
    void filtersOfOneTypeReplaceEachOther() {
        assertThat(on("pi4", "[pi3]", "[pi4]").truth()).isEqualTo(Truth.TRUE);
        assertThat(on("pi4", "[pi4]", "[pi3]").truth()).isEqualTo(Truth.FALSE);
    }

    @Example
    void filtersOfDifferentTypesHoldTogether() {
        assertThat(on("pi4", "[pi4]", "[tryboot]").truth()).isEqualTo(Truth.FALSE);
        assertThat(on("pi4", "[tryboot]", "[pi4]").truth()).isEqualTo(Truth.FALSE);
    }

    @Example
    void allClearsEveryFilter() {
        assertThat(on("pi4", "[pi3]", "[none]", "[tryboot]", "[all]").truth()).isEqualTo(Truth.TRUE);
    }

    @Example
    void noneLetsNothingThrough() {
        assertThat(on("pi4", "[pi4]", "[none]").truth()).isEqualTo(Truth.FALSE);
    }

    /** No source tells whether a later filter lifts {@code [none]}. */
    @Example
    void afterNoneAFilterThatHoldsDependsAndOneThatDoesNotFails() {
        assertThat(on("pi4", "[none]", "[pi4]"))
                .isEqualTo(Condition.dependsOn("whether [none] still holds under the later filter, no source tells"));
        assertThat(on("pi4", "[none]", "[pi3]").truth()).isEqualTo(Truth.FALSE);
    }

    /** No source tells what an unknown section does. */
    @Example
    void anUnknownSectionDependsUntilAll() {
        assertThat(on("pi4", "[PI4]")).isEqualTo(Condition.dependsOn("what the board makes of [PI4]"));
        assertThat(on("pi4", "[PI4]", "[pi4]").truth()).isEqualTo(Truth.UNKNOWN);
        assertThat(on("pi4", "[PI4]", "[pi3]").truth()).isEqualTo(Truth.FALSE);
        assertThat(on("pi4", "[PI4]", "[all]").truth()).isEqualTo(Truth.TRUE);
    }

    /** A bound against hostile cards: what is dropped is never told as sure. */
    @Example
    void tooManyFiltersAtOnceDepend() {
        String[] pins = IntStream.rangeClosed(0, FilterState.MAX_FILTERS)
                .mapToObj(pin -> "[gpio" + pin + "=1]")
                .toArray(String[]::new);
        FilterState state = state(pins);

        assertThat(state.together()).hasSizeLessThanOrEqualTo(FilterState.MAX_FILTERS);
        assertThat(state.on(filter -> Condition.HOLDS))
                .isEqualTo(Condition.dependsOn("what the board makes of so many filters at once"));
        assertThat(state.with(new Filter.All()).on(filter -> Condition.FAILS)).isEqualTo(Condition.HOLDS);
    }

    @Example
    void aLongListOfReasonsIsCut() {
        Condition all = Condition.dependsOnAll(IntStream.range(0, 100).mapToObj(i -> Condition.dependsOn("pin " + i)));

        assertThat(all.dependsOn()).hasSize(Condition.MAX_REASONS).endsWith("more than can be listed");
        assertThat(all.and(Condition.dependsOn("pin 0"))).isEqualTo(all);
    }

    private Condition on(String board, String... sections) {
        return state(sections).on(filter -> Condition.of(filter.equals(new Filter.Model(board))));
    }

    private FilterState state(String... sections) {
        FilterState state = FilterState.EMPTY;
        for (String section : sections) {
            state = state.with(parser.parse(section));
        }
        return state;
    }

    @Provide
    Arbitrary<List<String>> sections() {
        return Arbitraries.of(SECTIONS).list().ofMaxSize(7);
    }

    @Provide
    Arbitrary<Set<String>> known() {
        return Arbitraries.of(SECTIONS).set();
    }

    @Provide
    Arbitrary<List<Boolean>> chances() {
        return Arbitraries.of(true, false).list().ofSize(40);
    }

    /** Coin throws that were made beforehand. */
    private static final class Chances {

        private final List<Boolean> thrown;
        private int used;

        private Chances(List<Boolean> thrown) {
            this.thrown = thrown;
        }

        private boolean next() {
            return thrown.get(used++ % thrown.size());
        }
    }
}
