package bootmend.trial;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A column of a board's log, with the names that its head may have; case, blanks and signs do not count there. */
enum LogColumn {
    TIME("time", "seconds", "times", "timestamp", "uptime", "uptimes", "date", "datetime", "epoch"),
    CLOCK(
            "clockmhz",
            "clock",
            "mhz",
            "cpumhz",
            "frequencymhz",
            "frequency",
            "freq",
            "cpufreq",
            "clockkhz",
            "clockhz",
            "armfreq",
            "armclock"),
    VOLTS("volts", "volt", "voltage", "voltsv", "voltagev", "corevolts", "vcore", "core"),
    TEMPERATURE(
            "temperature",
            "temp",
            "temperaturedegc",
            "tempdegc",
            "temperaturec",
            "tempc",
            "degc",
            "celsius",
            "cputemp",
            "soctemp"),
    MASK("mask", "throttlemask", "throttled", "throttle"),
    BUSY("busy", "busypercent", "load", "loadpercent", "cpubusy", "cpuload", "usage", "cpuusage");

    private final List<String> heads;

    LogColumn(String... heads) {
        this.heads = List.of(heads);
    }

    /** The column that a head means; empty for a column that is not used. */
    static Optional<LogColumn> of(String head) {
        String plain = head.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
        return Arrays.stream(values())
                .filter(column -> column.heads.contains(plain))
                .findFirst();
    }
}
