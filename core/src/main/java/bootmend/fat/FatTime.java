package bootmend.fat;

import java.time.LocalDateTime;

/**
 * Packs a moment into FAT's date and time words: local time, two-second steps, years 1980 to 2107.
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

    static short time(LocalDateTime moment) {
        return (short) (moment.getHour() << 11 | moment.getMinute() << 5 | moment.getSecond() / 2);
    }
}
