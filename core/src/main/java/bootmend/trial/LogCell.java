package bootmend.trial;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a cell of a log as boards and people write it: with a name in front, a unit behind, a decimal comma. */
final class LogCell {

    private static final Pattern NUMBER = Pattern.compile(
            "(?:[A-Za-z_]+[A-Za-z0-9_]*(?:\\([0-9]+\\))?\\s*=\\s*)?([-+]?[0-9]+(?:[.,][0-9]*)?(?:[eE][-+]?[0-9]{1,3})?)\\s*"
                    + "('C|\u00b0C|\u00b0|C|degC|MHz|kHz|Hz|GHz|mV|V|%|s|ms)?",
            Pattern.CASE_INSENSITIVE);
    private static final double THOUSAND = 1000;
    private static final double MILLION = 1_000_000;
    /** Seconds since 1970 do not reach this before the year 5138; milliseconds passed it in 1973. */
    private static final double MILLISECONDS = 1e11;

    private static final double MICROSECONDS = 1e14;
    private static final double NANOSECONDS = 1e17;
    /** A clock over this many MHz is in kHz, and over that many in Hz. */
    private static final double KILOHERTZ = 10_000;

    private static final double HERTZ = 20_000_000;
    private static final double MILLIDEGREES = 1000;
    private static final double MILLIVOLTS = 100;
    private static final double MICROVOLTS = 50_000;

    private LogCell() {}

    /** @throws IllegalArgumentException with a part of a sentence, if it is no number */
    static double number(String text) {
        Matcher matcher = NUMBER.matcher(text.strip());
        if (!matcher.matches()) {
            throw new IllegalArgumentException("it has text where a number should be");
        }
        double value = Double.parseDouble(matcher.group(1).replace(',', '.'));
        return "GHz".equalsIgnoreCase(matcher.group(2)) ? value * THOUSAND : value;
    }

    /** In MHz; kHz and Hz are told by their size. */
    static double clock(String text) {
        double value = number(text);
        if (value > HERTZ) {
            return value / MILLION;
        }
        return value > KILOHERTZ ? value / THOUSAND : value;
    }

    /** In degC; thousandths are told by their size. */
    static double celsius(String text) {
        double value = number(text);
        return Math.abs(value) >= MILLIDEGREES ? value / THOUSAND : value;
    }

    /** In V; thousandths and millionths are told by their size. */
    static double volts(String text) {
        double value = number(text);
        if (value >= MICROVOLTS) {
            return value / MILLION;
        }
        return value >= MILLIVOLTS ? value / THOUSAND : value;
    }

    /** In seconds from whatever moment; a date with {@code T} or a blank, with a zone or without. */
    static double seconds(String text) {
        String plain = text.strip();
        if (!plain.matches("\\d{4}-\\d{2}-\\d{2}.+")) {
            double value = number(plain);
            if (value >= NANOSECONDS) {
                return value / (THOUSAND * MILLION);
            }
            if (value >= MICROSECONDS) {
                return value / MILLION;
            }
            return value >= MILLISECONDS ? value / THOUSAND : value;
        }
        Instant time = instant(plain.replaceFirst("[ T]+", "T").replace(',', '.'));
        return time.getEpochSecond() + time.getNano() / 1e9;
    }

    private static Instant instant(String text) {
        String zoned = text.replaceFirst("\\s+(UTC|GMT|Z)$", "Z").replaceFirst("\\s*([-+]\\d{2}):?(\\d{2})$", "$1:$2");
        try {
            return zoned.matches(".*(Z|[-+]\\d{2}:\\d{2})")
                    ? OffsetDateTime.parse(zoned).toInstant()
                    : LocalDateTime.parse(zoned).toInstant(ZoneOffset.UTC);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("its time is neither seconds nor like 2026-11-24 15:30:00", e);
        }
    }
}
