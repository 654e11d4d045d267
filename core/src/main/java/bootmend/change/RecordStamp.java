package bootmend.change;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** The moment in an undo record's name, such as {@code 20261231-235959-999999}, in UTC to the microsecond. */
final class RecordStamp {

    static final int LENGTH = "20261231-235959-999999".length();

    private static final DateTimeFormatter FORMAT =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss-SSSSSS", Locale.ROOT).withZone(ZoneOffset.UTC);

    private RecordStamp() {}

    static String of(Instant moment) {
        return FORMAT.format(moment);
    }

    /** The stamp one microsecond later; the earliest possible one after none. */
    static String after(String stamp) {
        return stamp.isEmpty() ? "" : of(FORMAT.parse(stamp, Instant::from).plus(1, ChronoUnit.MICROS));
    }
}
