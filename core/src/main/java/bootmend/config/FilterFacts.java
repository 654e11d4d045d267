package bootmend.config;

/** What is known about a board, as far as section filters ask. */
@FunctionalInterface
public interface FilterFacts {

    /** Whether a filter other than {@code [all]} and {@code [none]} lets lines through on this board. */
    Condition test(Filter filter);
}
