package bootmend.fat;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.Optional;

/**
 * When a file was made and last written, local time to two seconds as FAT keeps it; nothing where the volume does not say.
 */
public record WrittenTime(Optional<LocalDateTime> written, Optional<LocalDateTime> created) {

    /** Where nothing is known. */
    public static final WrittenTime UNKNOWN = new WrittenTime(Optional.empty(), Optional.empty());

    private static final int FIRST_YEAR = 1980;

    static WrittenTime of(short time, short date, short createdTime, short createdDate) {
        return new WrittenTime(moment(time, date), moment(createdTime, createdDate));
    }

    /** Source: "FAT: General Overview of On-Disk Format", version 1.03, "Date and Time Formats"; 0 is no date. */
    private static Optional<LocalDateTime> moment(short time, short date) {
        try {
            return Optional.of(LocalDateTime.of(
                    FIRST_YEAR + (date >> 9 & 0x7F),
                    date >> 5 & 0xF,
                    date & 0x1F,
                    time >> 11 & 0x1F,
                    time >> 5 & 0x3F,
                    2 * (time & 0x1F)));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }
}
