package bootmend.fat;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.Optional;

/**
 * Packs a moment into FAT's date and time words and back: local time, two-second steps, years 1980 to 2107.
 *
 * <p>Source: "FAT: General Overview of On-Disk Format", version 1.03, "Date and Time Formats".
 */
final class FatTime {

    private static final int FIRST_YEAR = 1980;
    private static final int LAST_YEAR = 2107;

    private FatTime() {}

    static short date(LocalDateTime moment) {
        int year = Math.min(LAST_YEAR, Math.max(FIRST_YEAR, moment.getYear())) - FIRST_YEAR;
        return (short) (year << 9 | moment.getMonthValue() << 5 | moment.getDayOfMonth());
    }

    /** The moment that both words hold; empty where they hold no date of the calendar. */
    static Optional<LocalDateTime> moment(short date, short time) {
        int day = date & 0xFFFF;
        int clock = time & 0xFFFF;
        try {
            return Optional.of(LocalDateTime.of(
                    FIRST_YEAR + (day >>> 9),
                    day >>> 5 & 0xF,
                    day & 0x1F,
                    clock >>> 11,
                    clock >>> 5 & 0x3F,
                    clock % 32 * 2));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    static short time(LocalDateTime moment) {
        return (short) (moment.getHour() << 11 | moment.getMinute() << 5 | moment.getSecond() / 2);
    }
}
