package bootmend.trial;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

/** What a log says against a trial. The limits that it goes by have no source. */
class LogChecksTest {

    private static final String HEAD = "uptime,clock_mhz,volts,temperature,mask,busy\n";

    /** Rows of a minute each, from a time on. */
    private static String rows(int from, int count, double clock, double volts, double busy) {
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < count; i++) {
            rows.append((from + i) * 60)
                    .append(',')
                    .append(clock)
                    .append(',')
                    .append(volts)
                    .append(",60,0x0,")
                    .append(busy)
                    .append('\n');
        }
        return rows.toString();
    }

    @Test
    void aLogThatShowsWhatIsSaidContradictsNothing() throws Exception {
        assertThat(check(
                        held(),
                        HEAD + rows(0, 3, 600, 0.85, 3) + rows(3, 50, 1900, 0.95, 100) + rows(53, 2, 600, 0.85, 3)))
                .isEmpty();
    }

    @Test
    void aClockThatWasNeverReached() throws Exception {
        assertThat(check(held(), HEAD + rows(0, 60, 1500, 0.95, 100)))
                .containsExactly("the log never reaches 1900 MHz: its highest clock is 1500 MHz");
    }

    @Test
    void aClockThatWasNotHeld() throws Exception {
        assertThat(check(
                        held(),
                        HEAD
                                + rows(0, 20, 1900, 0.95, 100)
                                + rows(20, 20, 1500, 0.95, 100)
                                + rows(40, 30, 1900, 0.95, 100)))
                .containsExactly(
                        "between its first and its last row at 1900 MHz the clock was below for 29 % of the time");
    }

    @Test
    void anotherClockThanTheOneThatRan() throws Exception {
        assertThat(check(held(), HEAD + rows(0, 60, 2000, 0.95, 100)))
                .containsExactly("the log goes up to 2000 MHz, so that 1900 MHz is not what ran");
    }

    @Test
    void aShorterRunThanTold() throws Exception {
        assertThat(check(told(50), HEAD + rows(0, 13, 1900, 0.95, 100)))
                .containsExactly("50 minutes were told, and the log shows 12.0 at the set clock");
    }

    @Test
    void anotherStartInTheMiddle() throws Exception {
        assertThat(check(held(), HEAD + rows(10, 30, 1900, 0.95, 100) + rows(1, 30, 1900, 0.95, 100)))
                .containsExactly(
                        "the log goes over another start of the board (1 in its middle), so that it did not hold through");
    }

    @Test
    void aGap() throws Exception {
        assertThat(check(held(), HEAD + rows(0, 30, 1900, 0.95, 100) + rows(45, 30, 1900, 0.95, 100)))
                .containsExactly("the log has a gap of 16.0 minutes, in which the board may have stopped");
    }

    @Test
    void processorsThatWereIdle() throws Exception {
        assertThat(check(held(), HEAD + rows(0, 60, 1900, 0.95, 30)))
                .containsExactly("full load was told, and the processors were busy for 30 % of the logged time");
    }

    @Test
    void aMaskThatWasToldOtherwise() throws Exception {
        assertThat(check(
                        held(),
                        (HEAD + rows(0, 60, 1900, 0.95, 100)).replace("0x0,100.0\n3000,", "0x50000,100.0\n3000,")))
                .containsExactly("the throttle mask was told as 0x0, and the log has 0x50000");
    }

    @Test
    void aFixedVoltageThatWavers() throws Exception {
        assertThat(check(held(), HEAD + rows(0, 30, 1900, 0.95, 100) + rows(30, 30, 1900, 0.88, 100)))
                .containsExactly("over_voltage fixes the core voltage, and at full clock it wavers by 0.070 V");
    }

    /** 1.2 V at step 0 and 0.025 V a step on pi1: S1 and S61 of tuning/sources.csv. */
    @Test
    void anotherVoltageThanThePublished() throws Exception {
        Placed trial =
                placed("pi1", Map.of("arm_freq", 900L, "over_voltage", 2L), OptionalDouble.empty(), Outcome.HOLDS);
        assertThat(check(trial, HEAD + rows(0, 60, 900, 1.25, 100))).isEmpty();
        assertThat(check(trial, HEAD + rows(0, 60, 900, 1.35, 100)))
                .containsExactly("step 2 is 1.250 V on this board, and the log has 1.350 V at full clock");
    }

    @Test
    void aBoardThatRanDidBoot() throws Exception {
        Placed trial =
                placed("pi4", Map.of("arm_freq", 1900L, "over_voltage", 2L), OptionalDouble.empty(), Outcome.NO_BOOT);
        assertThat(check(trial, HEAD + rows(0, 10, 1900, 0.95, 100)))
                .containsExactly("the log shows the board running at 1900 MHz, so that it did boot");
    }

    @Test
    void anotherFileThanTheOneThatRan() throws Exception {
        String ran = "# config: config.txt sha256 " + "ab".repeat(32) + "\n# try-once: no\n";
        Placed trial =
                placed("pi4", Map.of("arm_freq", 1900L, "over_voltage", 2L), OptionalDouble.empty(), Outcome.HOLDS);
        Trial told = trial.trial();
        Placed staged = new Placed(
                new Trial(
                        "",
                        told.when(),
                        told.unit(),
                        told.settings(),
                        told.outcome(),
                        told.run(),
                        told.scores(),
                        told.surroundings(),
                        new Grounds("tryboot.txt sha256 " + "cd".repeat(32), "", List.of()),
                        ""),
                trial.setting());
        assertThat(check(staged, ran + HEAD + rows(0, 60, 1900, 0.95, 100)))
                .containsExactly(
                        "the settings were read from tryboot.txt sha256 cdcdcdcdcdcd..., and on the board lay config.txt "
                                + "sha256 abababababab...",
                        "the log says that the board was started without its try-once flag, and the settings were read from "
                                + "the staged file");
    }

    private static Placed held() {
        return placed("pi4", Map.of("arm_freq", 1900L, "over_voltage", 2L), OptionalDouble.empty(), Outcome.HOLDS);
    }

    private static Placed told(double minutes) {
        return placed("pi4", Map.of("arm_freq", 1900L, "over_voltage", 2L), OptionalDouble.of(minutes), Outcome.HOLDS);
    }

    private static Placed placed(String board, Map<String, Long> settings, OptionalDouble minutes, Outcome outcome) {
        Trial trial = LabTrials.at(1900, 2).board(board).trial(1);
        return Placement.of(
                        List.of(new Trial(
                                "",
                                trial.when(),
                                trial.unit(),
                                settings,
                                outcome,
                                new Run(
                                        minutes,
                                        true,
                                        OptionalDouble.empty(),
                                        OptionalDouble.empty(),
                                        OptionalLong.of(0)),
                                Map.of(),
                                LabTrials.LAB,
                                "")),
                        LabTrials.TABLES)
                .placed()
                .get(0);
    }

    private static List<String> check(Placed trial, String log) throws CardException, IOException {
        LogSummary summary = LogSummary.of(
                LogReader.read("log.csv", new StringReader(log)),
                OptionalDouble.of(trial.setting().clock()),
                LabTrials.TABLES.throttleBits());
        return LogChecks.contradictions(trial, summary, LabTrials.TABLES);
    }
}
