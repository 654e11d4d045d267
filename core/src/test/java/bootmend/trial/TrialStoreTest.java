package bootmend.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.NextStep;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class TrialStoreTest {

    private static final String WHOLE = """
            schema: 1
            when: 2026-11-02T09:00:00Z
            board: pi4
            label: lab-07
            settings:
              arm_freq: 2000
              over_voltage: 4
            outcome: no boot
            minutes: 12.5
            full_load: yes
            throttle_mask: 0x50000
            """;

    @TempDir
    private Path home;

    private TrialStore store;

    @BeforeEach
    void open() {
        store = new TrialStore(home, LabTrials.TABLES);
    }

    @Test
    void keepsEveryFieldOfATrial() throws Exception {
        Trial trial = new Trial(
                "",
                Instant.parse("2026-11-02T09:00:00.25Z"),
                new Unit("pi4", "lab-07 \"Rosa\": #3"),
                Map.of("arm_freq", 2000L, "over_voltage", -2L),
                Outcome.NO_BOOT,
                new Run(
                        OptionalDouble.of(47.5),
                        true,
                        OptionalDouble.of(71.25),
                        OptionalDouble.of(1999.98),
                        OptionalLong.of(0x50005)),
                Map.of("one core", 312.0, "0x10: yes", 0.5),
                new Surroundings("yes", "no", OptionalDouble.of(-3)),
                "Two lines:\n- the second # is no comment\n  and a third");

        Trial kept = store.add(trial);

        assertThat(store.read().whole()).containsExactly(kept);
        assertThat(kept.withId("")).isEqualTo(trial);
    }

    @Test
    void keepsATrialWithNothingMeasured() throws Exception {
        Trial kept = store.add(new Trial(
                "",
                Instant.EPOCH,
                new Unit("pi4", "~"),
                Map.of(),
                Outcome.BOOTS,
                Run.UNMEASURED,
                Map.of(),
                Surroundings.UNKNOWN,
                ""));

        assertThat(store.read().whole()).containsExactly(kept);
    }

    @Test
    void isEmptyWhereNothingWasKept() throws Exception {
        assertThat(store.read().whole()).isEmpty();
        assertThat(home).isEmptyDirectory();
    }

    @Test
    void readsWhatAPersonWouldWrite() throws Exception {
        write("by-hand.yaml", WHOLE);

        assertThat(store.read().whole()).singleElement().satisfies(trial -> {
            assertThat(trial.id()).isEqualTo("by-hand");
            assertThat(trial.settings()).containsExactly(Map.entry("arm_freq", 2000L), Map.entry("over_voltage", 4L));
            assertThat(trial.outcome()).isEqualTo(Outcome.NO_BOOT);
            assertThat(trial.run().fullLoad()).isTrue();
            assertThat(trial.run().mask()).hasValue(0x50000);
            assertThat(trial.notes()).isEmpty();
        });
    }

    @ParameterizedTest
    @ValueSource(strings = {"../../escape", "..", "/etc/lab", "a\\b", "con", "\u00fc \u202e", ".hidden", "x/../../y"})
    void noLabelEscapesTheStore(String label) throws Exception {
        Trial kept = store.add(new Trial(
                "",
                Instant.EPOCH,
                new Unit("pi4", label),
                Map.of(),
                Outcome.BOOTS,
                Run.UNMEASURED,
                Map.of(),
                Surroundings.UNKNOWN,
                ""));

        try (Stream<Path> files = Files.walk(home)) {
            assertThat(files.filter(Files::isRegularFile)).containsExactly(store.file(kept));
        }
        assertThat(kept.id()).matches("trial[a-z0-9-]*");
        assertThat(store.file(kept).getParent()).isEqualTo(home.resolve("trials"));
        assertThat(store.read().whole())
                .extracting(trial -> trial.unit().label())
                .containsExactly(label);
    }

    @Test
    void leavesOnlyWholeFilesBehind() throws Exception {
        store.add(LabTrials.at(2000, 4).trial(1));
        store.add(LabTrials.at(2000, 4).trial(2));

        try (Stream<Path> files = Files.list(home.resolve("trials"))) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .hasSize(2)
                    .allSatisfy(name -> assertThat(name).endsWith(".yaml"));
        }
    }

    static Stream<Arguments> wrong() {
        return Stream.of(
                Arguments.of("", 1, "the file is empty"),
                Arguments.of("- a\n- b\n", 1, "should begin with lines like \"schema: 1\""),
                Arguments.of(WHOLE.replace("schema: 1", "schema: 2"), 1, "reads schema 1, not 2"),
                Arguments.of(WHOLE.replace("schema: 1\n", ""), 1, "schema is missing"),
                Arguments.of(WHOLE + "minuts: 3\n", 12, "there is no minuts here"),
                Arguments.of(WHOLE + "minutes: 3\n", 12, "minutes stands here twice"),
                Arguments.of(WHOLE.replace("12.5", "soon"), 9, "should be a number, found soon"),
                Arguments.of(WHOLE.replace("12.5", "-3"), 9, "minutes should be 0 to 1000000"),
                Arguments.of(WHOLE.replace("12.5", "NaN"), 9, "minutes should be"),
                Arguments.of(WHOLE.replace("no boot", "exploded"), 8, "one of boots, no boot"),
                Arguments.of(WHOLE.replace("pi4", "pi99"), 3, "there is no board pi99"),
                Arguments.of(WHOLE.replace("arm_freq", "arm_freqq"), 6, "this is no tuning key"),
                Arguments.of(WHOLE.replace("2000", "fast"), 6, "should be a number, found fast"),
                Arguments.of(WHOLE.replace("0x50000", "0x1FFFFFFFF"), 11, "0x0 to 0xFFFFFFFF"),
                Arguments.of(WHOLE.replace("full_load: yes", "full_load: perhaps"), 10, "write true or false"),
                Arguments.of(WHOLE.replace("2026-11-02T09:00:00Z", "monday"), 2, "2026-11-24T15:30:00Z"),
                Arguments.of(WHOLE.replace("label: lab-07", "label: [a, b]"), 4, "plain text or a number"),
                Arguments.of(WHOLE.replace("label: lab-07", "label:\n  a: b"), 4, "should be one value"),
                Arguments.of(WHOLE.replace("label: lab-07", "label: " + "x".repeat(61)), 4, "at most 60"),
                Arguments.of(WHOLE + "notes: *anchor\n", 12, ""),
                Arguments.of(WHOLE + "notes: \"open\n", 12, "this is no YAML"),
                Arguments.of(WHOLE + "---\nschema: 1\n", 13, "second document"),
                Arguments.of(WHOLE + "scores:\n  one core: 0\n", 13, "above 0"),
                Arguments.of(WHOLE + "scores:\n  a:\n    b: c\n", 13, "one value, not a list"),
                Arguments.of("{".repeat(5000), 1, ""),
                Arguments.of(WHOLE + "# " + "x".repeat(70_000), 1, "more than 65536 bytes"),
                Arguments.of("\0\u0001", 1, "this is no YAML"));
    }

    @ParameterizedTest
    @MethodSource("wrong")
    void aWrongFileIsNamedWithItsLine(String text, int line, String words) throws Exception {
        Path file = write("wrong.yaml", text);
        write("good.yaml", WHOLE);

        TrialStore.Content content = store.read();

        assertThat(content.trials()).extracting(Trial::id).containsExactly("good");
        assertThat(content.problems()).singleElement().satisfies(problem -> {
            assertThat(problem.getMessage())
                    .startsWith(file + ", line " + line + ": ")
                    .contains(words);
            assertThat(problem.getMessage().lines()).hasSize(1);
            assertThat(problem.kind()).isEqualTo(CardException.Kind.UNREADABLE);
        });
        assertThatThrownBy(content::whole).isInstanceOf(CardException.class);
    }

    @Test
    void aFolderNamedLikeATrialIsAProblemToo() throws Exception {
        Files.createDirectories(home.resolve("trials/folder.yaml"));

        assertThat(store.read().problems())
                .singleElement()
                .satisfies(problem -> assertThat(problem).hasMessageContaining("this is no file"));
    }

    @Test
    void whatIsDeletedCanBePutBack() throws Exception {
        Trial kept = store.add(LabTrials.at(2000, 4).trial(1));
        store.delete(kept.id());
        assertThat(store.read().trials()).isEmpty();
        assertThat(store.deleted().trials()).extracting(Trial::id).containsExactly(kept.id());

        store.restore(kept.id());
        assertThat(store.read().trials()).containsExactly(kept);
        assertThat(store.deleted().trials()).isEmpty();
        assertThatThrownBy(() -> store.restore(kept.id()))
                .isInstanceOfSatisfying(
                        CardException.class,
                        e -> assertThat(e.steps()).containsExactly(NextStep.Plain.LIST_DELETED_TRIALS));
    }

    @Test
    void theEndOfAnIdIsEnough() throws Exception {
        Trial kept = store.add(LabTrials.at(2000, 4).trial(1));
        assertThat(kept.id()).endsWith("-" + TrialStore.shortId(kept));
        assertThat(store.find(TrialStore.shortId(kept))).isEqualTo(kept);
        store.delete(TrialStore.shortId(kept));
        assertThat(store.read().trials()).isEmpty();
    }

    @Test
    void anIdLeadsNowhereElse() {
        for (String id : new String[] {"../x", "", "a/b", ".hidden", "a\\b", "c:d"}) {
            assertThatThrownBy(() -> store.delete(id)).isInstanceOf(CardException.class);
            assertThatThrownBy(() -> store.find(id)).isInstanceOf(CardException.class);
        }
    }

    @Test
    void aFileThatIsNoTrialCanBeDeletedToo() throws Exception {
        write("torn.yaml", "schema: 1\nwhen: soon\n");
        store.delete("torn");
        assertThat(store.read().problems()).isEmpty();
    }

    @Test
    void saysWhyATrialCouldNotBeKept() throws Exception {
        Files.writeString(home.resolve("trials"), "a file where the folder should be");

        assertThatThrownBy(() -> store.add(LabTrials.at(2000, 4).trial(1)))
                .isInstanceOfSatisfying(CardException.class, e -> {
                    assertThat(e.kind()).isEqualTo(CardException.Kind.REFUSED);
                    assertThat(e.steps()).containsExactly(NextStep.Plain.SET_DATA_FOLDER);
                });
    }

    @Test
    void placesTrialsWithoutAClockAtStockAndSetsTheUnclearAside() {
        List<Trial> trials = LabTrials.list(
                LabTrials.at(0, 0).unset("arm_freq").unset("over_voltage"),
                LabTrials.at(0, 0).unset("arm_freq").set("arm_boost", 1),
                LabTrials.at(2000, 0).unset("over_voltage").set("over_voltage_delta", 50_000),
                LabTrials.at(2000, 9),
                LabTrials.at(0, 0).unset("arm_freq").board("cm3"),
                // dvfs=2 fixes the voltage for the default clocks, under dvfs=1 it may fall: S30 of tuning/sources.csv.
                LabTrials.at(1800, 0).unset("over_voltage").set("dvfs", 2),
                LabTrials.at(1800, 0).unset("over_voltage").set("dvfs", 1),
                LabTrials.at(1800, 2).set("over_voltage_delta", 25_000));

        Placement placement = Placement.of(trials, LabTrials.TABLES);

        // Stock of pi4: 1500 MHz; with arm_boost it hangs on the revision ("Overclocking options", commit 6e5f9446).
        assertThat(placement.placed())
                .extracting(placed -> placed.setting().words())
                .containsExactly(
                        "1500 MHz with voltage left to the board",
                        "2000 MHz with voltage shifted by 50000 microvolts",
                        "1800 MHz at voltage step 0");
        assertThat(placement.aside()).hasSize(5);
        assertThat(placement.aside().get(0)).contains("Trial t2", "depends on the revision of the board");
        assertThat(placement.aside().get(1)).contains("Trial t4", "outside the published range");
        assertThat(placement.aside().get(2)).contains("Trial t5", "not published");
        assertThat(placement.aside().get(3)).contains("Trial t7", "dvfs=1");
        assertThat(placement.aside().get(4)).contains("Trial t8", "both over_voltage and over_voltage_delta");
        assertThat(Set.copyOf(placement.aside())).hasSize(5);
    }

    private Path write(String name, String text) throws IOException {
        Path folder = Files.createDirectories(home.resolve("trials"));
        return Files.write(folder.resolve(name), text.getBytes(StandardCharsets.UTF_8));
    }
}
