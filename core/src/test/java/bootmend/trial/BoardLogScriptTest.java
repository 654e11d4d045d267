package bootmend.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The logger for the board, run by this computer's {@code sh} on an invented /sys tree. */
class BoardLogScriptTest {

    private static final String HEAD = "time,clock_mhz,volts,temperature,mask,busy";
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
        assertThat(rows()).containsExactly(HEAD, "1234.56,1999.500,0.862,61.832,0x50000,");
    }

    @Test
    void leavesCellsEmptyWhereTheKernelOffersNothing() throws Exception {
        kernel("sys/class/thermal/thermal_zone0/temp", "-5");

        assertThat(run(Map.of("MAX_ROWS", "1")).code()).isZero();
        assertThat(rows()).containsExactly(HEAD, "1234.56,,,-0.005,,");
    }

    @Test
    void anUnderVoltageAlarmIsBitZeroAndItsAbsenceSaysNothing() throws Exception {
        kernel(CLOCK, "600000");
        kernel("sys/class/hwmon/hwmon0/in0_lcrit_alarm", "1");
        run(Map.of("MAX_ROWS", "1"));
        assertThat(Files.readAllLines(log)).last().isEqualTo("1234.56,600.000,,,0x1,");

        Files.delete(log);
        kernel("sys/class/hwmon/hwmon0/in0_lcrit_alarm", "0");
        run(Map.of("MAX_ROWS", "1"));
        assertThat(Files.readAllLines(log)).last().isEqualTo("1234.56,600.000,,,,");
    }

    @Test
    void whatStandsInTheFilesNeverBecomesMoreThanOneCell() throws Exception {
        kernel(CLOCK, "600000");
        kernel("sys/class/thermal/thermal_zone0/temp", "5,0$(touch " + folder.resolve("owned") + ")");
        kernel("sys/devices/platform/soc/soc:firmware/get_throttled", "`id`");

        run(Map.of("MAX_ROWS", "1"));

        assertThat(Files.readAllLines(log)).last().isEqualTo("1234.56,600.000,,,,");
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

    /** Answers of the query command as users print them; its sub-commands: os/graphics-utilities.adoc, commit 0cc21c8d. */
    @Test
    void measuresByTheFirmwaresOwnCommandWhereItIsThere() throws Exception {
        kernel(CLOCK, "2000000");
        kernel("proc/stat", "cpu  100 0 0 100 0 0 0 0 0 0");
        query("""
                case "$1" in
                    measure_clock) echo 'frequency(48)=1500398464' ;;
                    measure_volts) echo 'volt=0.8600V' ;;
                    measure_temp) echo "temp=65.2'C" ;;
                    get_throttled) echo 'throttled=0x20002' ;;
                    *) echo 'error=1 error_msg="Command not registered"' ;;
                esac""");

        assertThat(run(Map.of("MAX_ROWS", "1")).code()).isZero();
        assertThat(rows()).last().isEqualTo("1234.56,1500.398,0.8600,65.2,0x20002,");
        LogSummary sum = LogSummary.read(log, OptionalDouble.of(2000), LabTrials.TABLES.throttleBits());
        assertThat(sum.sources()).containsExactly("clock, volts, temperature and mask by the firmware's own measure");
        assertThat(sum.highestClock()).hasValue(1500.398);
    }

    @Test
    void saysWhichConfigFileLiesOnTheBoardAndHowItWasStarted() throws Exception {
        kernel(CLOCK, "600000");
        kernel("boot/firmware/config.txt", "arm_freq=1800");
        kernel("boot/firmware/tryboot.txt", "arm_freq=1900");
        Path flag = folder.resolve("proc/device-tree/chosen/bootloader/tryboot");
        Files.createDirectories(flag.getParent());
        Files.write(flag, new byte[] {0, 0, 0, 1});

        run(Map.of("MAX_ROWS", "1"));

        LogSummary sum = LogSummary.read(log, OptionalDouble.empty(), LabTrials.TABLES.throttleBits());
        String digest = HexFormat.of()
                .formatHex(MessageDigest.getInstance("SHA-256")
                        .digest("arm_freq=1900\n".getBytes(StandardCharsets.UTF_8)));
        assertThat(sum.configs()).hasSize(2).contains("tryboot.txt sha256 " + digest);
        assertThat(sum.tryOnce()).contains(true);
        assertThat(sum.sources()).hasSize(2);
    }

    @Test
    void aQueryCommandThatAnswersNonsenseIsNone() throws Exception {
        kernel(CLOCK, "600000");
        query("echo 'frequency(48)=1;touch " + folder.resolve("owned") + "'");

        assertThat(run(Map.of("MAX_ROWS", "1")).code()).isZero();
        assertThat(rows()).last().isEqualTo("1234.56,600.000,,,,");
        assertThat(folder.resolve("owned")).doesNotExist();
    }

    private void query(String body) throws IOException {
        Path command = folder.resolve("usr/bin/testgencmd");
        Files.createDirectories(command.getParent());
        Files.writeString(command, "#!/bin/sh\n" + body + "\n");
        assertThat(command.toFile().setExecutable(true)).isTrue();
    }

    private List<String> rows() throws IOException {
        return Files.readAllLines(log).stream()
                .filter(row -> !row.startsWith("#"))
                .toList();
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
