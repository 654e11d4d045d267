package bootmend.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.IntFunction;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LineEditTest {

    private long asked;

    @ParameterizedTest
    @ValueSource(ints = {4, 400, 80_000})
    void aLineThatWasCommentedOutIsAnEditOfItsOwn(int lines) {
        List<String> old = text(lines, i -> i % 4 == 1 ? "arm_freq=" + i : "# line " + i);
        List<String> changed = each(old, line -> line.startsWith("#") ? line : "#" + line);

        assertThat(between(old, changed)).hasSize(lines / 4).allSatisfy(edit -> {
            assertThat(edit.old()).isEqualTo(List.of(old.get(edit.at())));
            assertThat(edit.changed()).isEqualTo(List.of("#" + old.get(edit.at())));
        });
    }

    /** Counted, not timed: 20 times the lines took 400 times the steps. */
    @ParameterizedTest
    @ValueSource(ints = {20_000, 80_000})
    void stepsAreBoundedByTheLinesHoweverManyDiffer(int lines) {
        List<String> old = text(lines, i -> "gpu_freq=" + i);
        List<List<String>> others = List.of(
                each(old, line -> "#" + line),
                List.of(),
                reversed(old),
                old.subList(lines / 2, lines),
                join(old.subList(lines / 3, lines), old.subList(0, lines / 3)));
        for (List<String> changed : others) {
            asked = 0;

            List<LineEdit<String>> edits = between(old, changed);

            assertThat(applied(old, edits)).isEqualTo(changed);
            assertThat(asked).isLessThanOrEqualTo(160L * (old.size() + changed.size()));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {8, 80_000})
    void aFewLinesPutInOrTakenOutAreTheWholeDifference(int lines) {
        List<String> old = text(lines, i -> "# line " + i);
        List<String> changed = new ArrayList<>(old);
        changed.subList(2, 4).clear();
        changed.addAll(5, List.of("[all]", "arm_freq=1500"));
        changed.add("gpu_freq=500");

        List<LineEdit<String>> edits = between(old, changed);

        assertThat(edits)
                .containsExactly(
                        new LineEdit<>(2, List.of("# line 2", "# line 3"), List.of()),
                        new LineEdit<>(7, List.of(), List.of("[all]", "arm_freq=1500")),
                        new LineEdit<>(lines, List.of(), List.of("gpu_freq=500")));
    }

    @Test
    void longTextsThatAreAlikeHaveNoEdit() {
        List<String> text = text(40_000, i -> "# line " + i);

        assertThat(between(text, List.copyOf(text))).isEmpty();
        assertThat(asked).isLessThanOrEqualTo(2L * text.size());
    }

    private List<LineEdit<String>> between(List<String> old, List<String> changed) {
        return LineEdit.between(old, changed, (left, right) -> {
            asked++;
            return left.equals(right);
        });
    }

    private static List<String> applied(List<String> old, List<LineEdit<String>> edits) {
        List<String> made = new ArrayList<>();
        int done = 0;
        for (LineEdit<String> edit : edits) {
            made.addAll(old.subList(done, edit.at()));
            assertThat(old.subList(edit.at(), edit.at() + edit.old().size())).isEqualTo(edit.old());
            made.addAll(edit.changed());
            done = edit.at() + edit.old().size();
        }
        made.addAll(old.subList(done, old.size()));
        return made;
    }

    private static List<String> text(int lines, IntFunction<String> line) {
        return IntStream.range(0, lines).mapToObj(line).toList();
    }

    private static List<String> each(List<String> lines, UnaryOperator<String> change) {
        return lines.stream().map(change).toList();
    }

    private static List<String> reversed(List<String> lines) {
        List<String> turned = new ArrayList<>(lines);
        Collections.reverse(turned);
        return turned;
    }

    private static List<String> join(List<String> first, List<String> second) {
        return Stream.concat(first.stream(), second.stream()).toList();
    }
}
