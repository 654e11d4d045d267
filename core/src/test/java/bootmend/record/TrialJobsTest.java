package bootmend.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.trial.Trial;
import bootmend.trial.VoltageAxis;
import bootmend.view.CautionView;
import bootmend.workplace.MemoryWorkplace;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Trials through the jobs, with boards of an invented robotics lab. */
class TrialJobsTest {

    private static final TrialRequest.Measured HOUR = new TrialRequest.Measured(
            OptionalDouble.of(60),
            true,
            OptionalDouble.of(61),
            OptionalDouble.empty(),
            Optional.of("0x0"),
            List.of("one core=312"));

    private final MemoryWorkplace bench = new MemoryWorkplace();

    @AfterEach
    void close() throws Exception {
        bench.close();
    }

    @Test
    void keepsWhatWasTold() throws Exception {
        TrialAdded added =
                add("lab-07", Optional.of("pi4"), List.of("arm_freq=2000", "over_voltage = 4"), "holds", HOUR);

        Trial trial = added.trial();
        assertThat(trial.settings()).isEqualTo(Map.of("arm_freq", 2000L, "over_voltage", 4L));
        assertThat(trial.when()).isEqualTo(Instant.parse("2026-02-03T10:11:12Z"));
        assertThat(trial.isKnownGood()).isTrue();
        assertThat(trial.scores()).containsExactly(Map.entry("one core", 312.0));
        assertThat(added.notes()).isEmpty();
        assertThat(Files.readString(bench.home().resolve("trials").resolve(trial.id() + ".yaml")))
                .contains("label: lab-07", "outcome: holds", "  arm_freq: 2000");
    }

    @Test
    void theBoardIsSaidOnceForEachLabel() throws Exception {
        assertThatThrownBy(() -> add("lab-07", Optional.empty(), List.of("arm_freq=2000"), "holds", HOUR))
                .isInstanceOfSatisfying(
                        CardException.class, e -> assertThat(e.steps()).containsExactly(NextStep.Plain.GIVE_BOARD));
        add("lab-07", Optional.of("pi4"), List.of("arm_freq=2000"), "holds", HOUR);

        assertThat(add("lab-07", Optional.empty(), List.of("arm_freq=2050"), "no-boot", HOUR)
                        .trial()
                        .unit()
                        .board())
                .isEqualTo("pi4");
        assertThatThrownBy(() -> add("lab-07", Optional.of("pi3"), List.of("arm_freq=1300"), "holds", HOUR))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("lab-07 is a pi4 in earlier trials, not a pi3");
    }

    @Test
    void takesTheSettingsThatAreInForceOnTheBoardFromACard() throws Exception {
        bench.insert(
                "/card",
                MemoryWorkplace.card("arm_freq=1600\n[pi3]\nover_voltage=2\n[pi4]\narm_freq=0x7D0\nover_voltage=5\n"
                        + "#force_turbo=1\ngpu_freq=600\n[all]\ntemp_limit=99\n"));

        Trial trial = new TrialAddJob(bench.workplace())
                .run(request(
                        "lab-07",
                        Optional.of("pi4"),
                        Optional.of(CardRequest.of(Path.of("/card"))),
                        List.of("over_voltage=4"),
                        Optional.empty(),
                        "holds",
                        HOUR))
                .trial();

        assertThat(trial.settings())
                .containsEntry("arm_freq", 2000L)
                .containsEntry("over_voltage", 4L)
                .containsEntry("v3d_freq", 600L)
                .containsEntry("temp_limit", 85L)
                .doesNotContainKey("force_turbo");
    }

    @Test
    void asksWhereWhatTheCardSaysDependsOnMore() throws Exception {
        bench.insert("/card", MemoryWorkplace.card("[gpio4=1]\narm_freq=2000\n"));
        Optional<CardRequest> card = Optional.of(CardRequest.of(Path.of("/card")));

        assertThatThrownBy(() -> new TrialAddJob(bench.workplace())
                        .run(request("lab-07", Optional.of("pi4"), card, List.of(), Optional.empty(), "holds", HOUR)))
                .isInstanceOfSatisfying(CardException.class, e -> {
                    assertThat(e.getMessage()).contains("arm_freq", "pin 4");
                    assertThat(e.steps()).contains(new NextStep.GiveSetting("arm_freq"));
                });
        assertThat(new TrialAddJob(bench.workplace())
                        .run(request(
                                "lab-07",
                                Optional.of("pi4"),
                                card,
                                List.of("arm_freq=2000"),
                                Optional.empty(),
                                "holds",
                                HOUR))
                        .trial()
                        .settings())
                .containsEntry("arm_freq", 2000L);
    }

    @Test
    void armBoostIsADoubtOnlyWhereTheClockHangsOnIt() throws Exception {
        Optional<CardRequest> card = Optional.of(CardRequest.of(Path.of("/card")));
        bench.insert("/card", MemoryWorkplace.card("arm_boost=1\narm_freq=2000\n"));
        assertThat(new TrialAddJob(bench.workplace())
                        .run(request("lab-07", Optional.of("pi4"), card, List.of(), Optional.empty(), "holds", HOUR))
                        .trial()
                        .settings())
                .containsEntry("arm_boost", 1L);

        // Stock of pi4 from revision 1.4 on: 1500 MHz, 1800 with arm_boost=1 ("Overclocking options", commit 6e5f9446).
        bench.insert("/card", MemoryWorkplace.card("arm_boost=1\n"));
        assertThatThrownBy(() -> new TrialAddJob(bench.workplace())
                        .run(request("lab-07", Optional.of("pi4"), card, List.of(), Optional.empty(), "holds", HOUR)))
                .hasMessageContaining("what arm_freq was on this board depends");
    }

    @Test
    void takesFromALogWhatIsNotToldOtherwise(@TempDir Path folder) throws Exception {
        Path log = Files.writeString(
                folder.resolve("log.csv"),
                "time,clock_mhz,volts,temperature,mask\n"
                        + "0,2000,,50,0x0\n1500,2000,,66,0x0\n3000,1500,,72,0x20000\n4500,2000,,70,0x20000\n");
        TrialRequest.Measured peakOnly = new TrialRequest.Measured(
                OptionalDouble.empty(),
                true,
                OptionalDouble.of(73),
                OptionalDouble.empty(),
                Optional.empty(),
                List.of());

        TrialAdded added = new TrialAddJob(bench.workplace())
                .run(request(
                        "lab-07",
                        Optional.of("pi4"),
                        Optional.empty(),
                        List.of("arm_freq=2000"),
                        Optional.of(log),
                        "holds",
                        peakOnly));

        assertThat(added.trial().run().minutes()).hasValue(50);
        assertThat(added.trial().run().peak()).hasValue(73);
        assertThat(added.trial().run().mask()).hasValue(0x20000);
        assertThat(added.log())
                .hasValueSatisfying(sum -> assertThat(sum.setClock()).hasValue(2000));
        assertThat(added.notes())
                .singleElement()
                .asString()
                .contains("not known-good", "the throttle mask has bits set");
    }

    @Test
    void wrongWordsAreRefusedWithWhatWouldBeRight() {
        refused("exploded is no outcome", List.of(), "exploded", HOUR);
        refused("arm_freqq is no tuning key", List.of("arm_freqq=2"), "holds", HOUR);
        refused("arm_freq=fast is no setting", List.of("arm_freq=fast"), "holds", HOUR);
        refused(
                "the peak temperature should be",
                List.of(),
                "holds",
                new TrialRequest.Measured(
                        OptionalDouble.empty(),
                        false,
                        OptionalDouble.of(900),
                        OptionalDouble.empty(),
                        Optional.empty(),
                        List.of()));
        refused(
                "0xZZ is no throttle mask",
                List.of(),
                "holds",
                new TrialRequest.Measured(
                        OptionalDouble.empty(),
                        false,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Optional.of("0xZZ"),
                        List.of()));
        refused(
                "one core is no score",
                List.of(),
                "holds",
                new TrialRequest.Measured(
                        OptionalDouble.empty(),
                        false,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Optional.empty(),
                        List.of("one core")));
        assertThat(bench.home().resolve("trials")).doesNotExist();
    }

    @Test
    void saysWhatIsOutOfRange() throws Exception {
        assertThat(add("lab-07", Optional.of("pi4"), List.of("over_voltage=12"), "no-boot", HOUR)
                        .notes())
                .contains("over_voltage=12 is outside its published range.");
    }

    @Test
    void advisesFromTheTrialsOfOneLabelAlone() throws Exception {
        add("lab-07", Optional.of("pi4"), List.of("arm_freq=2000", "over_voltage=4"), "holds", HOUR);
        add("lab-08", Optional.of("pi4"), List.of("arm_freq=1600"), "no-boot", HOUR);

        TrialReport report = new TrialAdviseJob(bench.workplace()).run("lab-07", OptionalDouble.empty());

        assertThat(report.advice().setting())
                .hasValueSatisfying(next -> assertThat(next.axis()).isEqualTo(VoltageAxis.STEPS));
        assertThat(report.trials()).hasSize(1);
        assertThat(report.cautions()).extracting(CautionView::id).contains("limits", "warranty", "heat");
    }

    @Test
    void tellsTrialsThatDifferInMoreThanClockAndVoltage() throws Exception {
        add("lab-07", Optional.of("pi4"), List.of("arm_freq=2000", "gpu_freq=600"), "holds", HOUR);
        add("lab-07", Optional.of("pi4"), List.of("arm_freq=2050"), "no-boot", HOUR);

        assertThat(new TrialAdviseJob(bench.workplace())
                        .run("lab-07", OptionalDouble.empty())
                        .notes())
                .singleElement()
                .asString()
                .contains("(gpu_freq)");
    }

    @Test
    void aFileThatCannotBeReadStopsTheAdviceAndNotTheList() throws Exception {
        add("lab-07", Optional.of("pi4"), List.of("arm_freq=2000"), "holds", HOUR);
        Files.writeString(bench.home().resolve("trials/edited.yaml"), "schema: 1\nwhen: soon\n");

        TrialListing listing = new TrialListJob(bench.workplace()).run(Optional.empty());
        assertThat(listing.trials()).hasSize(1);
        assertThat(listing.problems())
                .singleElement()
                .satisfies(problem -> assertThat(problem).hasMessageContaining("edited.yaml, line "));
        assertThatThrownBy(() -> new TrialAdviseJob(bench.workplace()).run("lab-07", OptionalDouble.empty()))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("edited.yaml, line ");
    }

    @Test
    void anUnknownLabelIsAnsweredWithTheKnownOnes() throws Exception {
        add("lab-07", Optional.of("pi4"), List.of("arm_freq=2000"), "holds", HOUR);

        assertThatThrownBy(() -> new TrialAdviseJob(bench.workplace()).run("pi4", OptionalDouble.empty()))
                .isInstanceOfSatisfying(
                        CardException.class, e -> assertThat(e.remedy()).contains("lab-07"));
    }

    @Test
    void theLoggerIsWrittenOnlyWhereNothingIs(@TempDir Path folder) throws Exception {
        Path script = folder.resolve("board-log.sh");
        new TrialLoggerJob().write(script);

        assertThat(Files.readString(script))
                .startsWith("#!/bin/sh\n")
                .isEqualTo(new TrialLoggerJob().text())
                .doesNotContain("\r");
        assertThatThrownBy(() -> new TrialLoggerJob().write(script))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("is there already");
    }

    private void refused(String words, List<String> settings, String outcome, TrialRequest.Measured measured) {
        assertThatThrownBy(() -> add("lab-07", Optional.of("pi4"), settings, outcome, measured))
                .isInstanceOfSatisfying(CardException.class, e -> {
                    assertThat(e.getMessage()).contains(words);
                    assertThat(e.kind()).isEqualTo(CardException.Kind.USAGE);
                });
    }

    private TrialAdded add(
            String label, Optional<String> board, List<String> settings, String outcome, TrialRequest.Measured measured)
            throws CardException {
        return new TrialAddJob(bench.workplace())
                .run(request(label, board, Optional.empty(), settings, Optional.empty(), outcome, measured));
    }

    private static TrialRequest request(
            String label,
            Optional<String> board,
            Optional<CardRequest> card,
            List<String> settings,
            Optional<Path> log,
            String outcome,
            TrialRequest.Measured measured) {
        return new TrialRequest(
                label,
                board.map(BoardRequest::of).orElse(BoardRequest.none()),
                card,
                settings,
                log,
                outcome,
                measured,
                "fan",
                "bench",
                OptionalDouble.of(22),
                Optional.empty(),
                "");
    }
}
