package bootmend.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The logger for the board, run by this computer's {@code sh} on an invented /sys tree. */
class BoardLogScriptTest {

    private static final String HEAD = "time,clock_mhz,volts,temperature,mask";
    private static final String CLOCK = "sys/devices/system/cpu/cpufreq/policy0/scaling_cur_freq";

    @TempDir
    private Path folder;

    private Path script;
    private Path log;

    private record Result(int code, String err) {}

    @BeforeEach
    void prepare() throws IOException {
        assumeThat(Path.of("/bin/sh")).exists();
        script = folder.resolve("board-log.sh");
        log = folder.resolve("log.csv");
        try (InputStream in = Trial.class.getResourceAsStream("board-log.sh")) {
            Files.write(script, in.readAllBytes());
        }
        kernel("proc/uptime", "1234.56 4321.00");
    }

    @Test
    void writesWhatEveryInterfaceOffers() throws Exception {
        kernel(CLOCK, "1999500");
        kernel("sys/class/thermal/thermal_zone0/type", "gpu-thermal");
        kernel("sys/class/thermal/thermal_zone0/temp", "30000");
        kernel("sys/class/thermal/thermal_zone1/type", "cpu-thermal");
        kernel("sys/class/thermal/thermal_zone1/temp", "61832");
        kernel("sys/class/hwmon/hwmon3/in0_label", "vcore");
        kernel("sys/class/hwmon/hwmon3/in0_input", "862");
        kernel("sys/devices/platform/soc/soc:firmware/get_throttled", "50000");

        Result result = run(Map.of("MAX_ROWS", "1"));

        assertThat(result.code()).isZero();
        assertThat(Files.readAllLines(log)).containsExactly(HEAD, "1234.56,1999.500,0.862,61.832,0x50000");
    }

    @Test
    void leavesCellsEmptyWhereTheKernelOffersNothing() throws Exception {
        kernel("sys/class/thermal/thermal_zone0/temp", "-5");

        assertThat(run(Map.of("MAX_ROWS", "1")).code()).isZero();
        assertThat(Files.readAllLines(log)).containsExactly(HEAD, "1234.56,,,-0.005,");
    }

    @Test
    void anUnderVoltageAlarmIsBitZeroAndItsAbsenceSaysNothing() throws Exception {
        kernel(CLOCK, "600000");
        kernel("sys/class/hwmon/hwmon0/in0_lcrit_alarm", "1");
        run(Map.of("MAX_ROWS", "1"));
        assertThat(Files.readAllLines(log)).last().isEqualTo("1234.56,600.000,,,0x1");

        Files.delete(log);
        kernel("sys/class/hwmon/hwmon0/in0_lcrit_alarm", "0");
        run(Map.of("MAX_ROWS", "1"));
        assertThat(Files.readAllLines(log)).last().isEqualTo("1234.56,600.000,,,");
    }

    @Test
    void whatStandsInTheFilesNeverBecomesMoreThanOneCell() throws Exception {
        kernel(CLOCK, "600000");
        kernel("sys/class/thermal/thermal_zone0/temp", "5,0$(touch " + folder.resolve("owned") + ")");
        kernel("sys/devices/platform/soc/soc:firmware/get_throttled", "`id`");

        run(Map.of("MAX_ROWS", "1"));

        assertThat(Files.readAllLines(log)).last().isEqualTo("1234.56,600.000,,,");
        assertThat(folder.resolve("owned")).doesNotExist();
    }

    @Test
    void stopsAfterItsRowsAndTheImportReadsThem() throws Exception {
        kernel(CLOCK, "2000000");
        kernel("sys/class/thermal/thermal_zone0/temp", "80500");
        kernel("sys/devices/platform/soc/soc:firmware/get_throttled", "0x80008");
        Files.delete(folder.resolve("proc/uptime"));

        Result result = run(Map.of("MAX_ROWS", "2", "INTERVAL", "1"));

        assertThat(result.err()).contains("2 rows in");
        LogSummary sum = LogSummary.read(log, OptionalDouble.of(2000), LabTrials.TABLES.throttleBits());
        assertThat(sum.rows()).isEqualTo(2);
        assertThat(sum.badRows()).isZero();
        assertThat(sum.peak()).hasValue(80.5);
        assertThat(sum.bits()).contains("soft temperature limit active now");
    }

    @Test
    void refusesWhatWouldNotWork() throws Exception {
        assertThat(run(Map.of("MAX_ROWS", "1"))).satisfies(result -> {
            assertThat(result.code()).isEqualTo(3);
            assertThat(result.err()).contains("offers neither clock nor temperature");
        });
        kernel(CLOCK, "600000");
        for (Map<String, String> wrong : List.of(
                Map.of("INTERVAL", "0"),
                Map.of("INTERVAL", "x"),
                Map.of("MAX_ROWS", "100000"),
                Map.of("MAX_ROWS", "1; id"))) {
            assertThat(run(wrong).code()).isEqualTo(2);
        }
        assertThat(log).doesNotExist();
        Files.writeString(log, "an older log");
        assertThat(run(Map.of("MAX_ROWS", "1")).err()).contains("is there already and was left alone");
        assertThat(log).hasContent("an older log");
    }

    private void kernel(String file, String content) throws IOException {
        Path path = folder.resolve(file);
        Files.createDirectories(path.getParent());
        Files.writeString(path, content + "\n");
    }

    private Result run(Map<String, String> environment) throws IOException, InterruptedException {
        Path err = folder.resolve("err.txt");
        ProcessBuilder builder =
                new ProcessBuilder("/bin/sh", script.toString(), log.toString()).redirectError(err.toFile());
        builder.environment().putAll(environment);
        builder.environment().put("ROOT", folder.toString());
        builder.environment().put("SYNC", "no");
        Process process = builder.start();
        assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
        return new Result(process.exitValue(), Files.readString(err));
    }
}
