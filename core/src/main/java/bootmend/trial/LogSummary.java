package bootmend.trial;

import bootmend.CardException;
import bootmend.tuning.ThrottleBit;
import bootmend.tuning.ThrottleBits;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.Function;
import java.util.stream.DoubleStream;

/**
 * What a board's log comes to. Each row stands for the time until the next one; a gap, which is longer than three times
 * the usual time between rows and at least 30 s, counts for nothing.
 *
 * @param rows good rows
 * @param badRows rows that were left out
 * @param problems the first of these, with line numbers
 * @param cutShort whether the log has more rows than are read
 * @param gaps how many gaps there are
 * @param gapMinutes how long they are together
 * @param longestGapMinutes the longest of them
 * @param restarts how often the board was started again in the middle of the log
 * @param minutes time that the rows stand for
 * @param setClock clock that the log is held against, in MHz; empty where it has no clocks
 * @param setClockGiven whether that one was given; else it is the highest in the log
 * @param minutesAtFullClock time at 98 % of the set clock or more
 * @param shareBelow share of the time with a clock that was below that, 0 to 1
 * @param shareBelowInside the same between the first and the last row at it, so that idle time before and after is left out
 * @param meanClock over the time, in MHz
 * @param highestClock in MHz
 * @param busy mean busy share of the processors at full clock, in percent
 * @param peak highest temperature, in degC
 * @param secondsTo80 from the first row to the first at 80 degC or more
 * @param minVolts lowest voltage, in V
 * @param maxVolts highest voltage, in V
 * @param meanVolts at full clock, in V
 * @param spreadVolts how far the voltages at full clock lie apart, but for the outermost tenth at each end, in V
 * @param mask every throttle bit that was seen; empty where the log has no masks
 * @param bits the same in words, oldest bit number first; bits that no table knows included
 * @param bitsBefore whether bits were set in the first row and no new one came in the log
 * @param sources how each figure was measured, as the log says it
 * @param configs the config files that lay on the board, as {@code NAME sha256 HEX}
 * @param tryOnce whether the board was started with its try-once flag; empty where the log does not say
 * @param sha256 digest of the log's file, in hexadecimal; empty where it was not read from one
 */
public record LogSummary(
        int rows,
        long badRows,
        List<String> problems,
        boolean cutShort,
        int gaps,
        double gapMinutes,
        double longestGapMinutes,
        int restarts,
        double minutes,
        OptionalDouble setClock,
        boolean setClockGiven,
        OptionalDouble minutesAtFullClock,
        OptionalDouble shareBelow,
        OptionalDouble shareBelowInside,
        OptionalDouble meanClock,
        OptionalDouble highestClock,
        OptionalDouble busy,
        OptionalDouble peak,
        OptionalDouble secondsTo80,
        OptionalDouble minVolts,
        OptionalDouble maxVolts,
        OptionalDouble meanVolts,
        OptionalDouble spreadVolts,
        OptionalLong mask,
        List<String> bits,
        boolean bitsBefore,
        List<String> sources,
        List<String> configs,
        Optional<Boolean> tryOnce,
        String sha256) {

    /** Where boards begin to slow down and which a trial should stay below, in degC (common practice, no source). */
    public static final double HOT = 80;
    /** A measured clock wavers; this much of the set clock is full clock (common practice, no source). */
    static final double FULL = 0.98;

    private static final double MINUTE = 60;

    public LogSummary {
        problems = List.copyOf(problems);
        bits = List.copyOf(bits);
        sources = List.copyOf(sources);
        configs = List.copyOf(configs);
    }

    /**
     * Reads a log and sums it up.
     *
     * @param setClock clock that was set, in MHz; where empty, the highest in the log
     * @throws CardException if the file is no log
     */
    public static LogSummary read(Path file, OptionalDouble setClock, ThrottleBits bits) throws CardException {
        return of(LogReader.read(file), setClock, bits, digest(file));
    }

    static LogSummary of(BoardLog log, OptionalDouble given, ThrottleBits known) {
        return of(log, given, known, "");
    }

    private static LogSummary of(BoardLog log, OptionalDouble given, ThrottleBits known, String digest) {
        List<Sample> samples = log.samples();
        OptionalDouble highest = values(samples, Sample::clock).max();
        OptionalDouble setClock = given.isPresent() ? given : highest;
        LogTime time = LogTime.of(samples, setClock.orElse(0) * FULL);
        List<Sample> full = samples.stream()
                .filter(sample -> sample.clock().orElse(0) >= setClock.orElse(0) * FULL)
                .toList();
        OptionalLong mask = samples.stream()
                .filter(sample -> sample.mask().isPresent())
                .mapToLong(sample -> sample.mask().getAsLong())
                .reduce((a, b) -> a | b);
        return new LogSummary(
                samples.size(),
                log.badRows(),
                log.problems(),
                log.cutShort(),
                time.gaps(),
                time.gapSeconds() / MINUTE,
                time.longestGap() / MINUTE,
                log.restarts().size(),
                time.seconds() / MINUTE,
                setClock,
                given.isPresent(),
                time.withClock(time.fullSeconds() / MINUTE),
                time.withClock(1 - time.fullSeconds() / time.clockSeconds()),
                inside(samples, full, setClock.orElse(0) * FULL),
                time.withClock(time.megacycles() / time.clockSeconds()),
                highest,
                values(full, Sample::busy).average(),
                values(samples, Sample::celsius).max(),
                timeToHot(samples),
                values(samples, Sample::volts).min(),
                values(samples, Sample::volts).max(),
                values(full, Sample::volts).average(),
                spread(values(full, Sample::volts).sorted().toArray()),
                mask,
                mask.isEmpty() ? List.of() : words(mask.getAsLong(), known),
                mask.isPresent()
                        && mask.getAsLong() != 0
                        && mask.equals(samples.get(0).mask()),
                log.clues().sources(),
                log.clues().configs(),
                log.clues().tryOnce(),
                digest);
    }

    private static OptionalDouble inside(List<Sample> samples, List<Sample> full, double clock) {
        if (full.isEmpty()) {
            return OptionalDouble.empty();
        }
        LogTime time = LogTime.of(
                samples.subList(samples.indexOf(full.get(0)), samples.lastIndexOf(full.get(full.size() - 1)) + 1),
                clock);
        return time.withClock(1 - time.fullSeconds() / time.clockSeconds());
    }

    private static OptionalDouble spread(double[] sorted) {
        int outer = sorted.length / 10;
        return sorted.length == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(sorted[sorted.length - 1 - outer] - sorted[outer]);
    }

    private static String digest(Path file) throws CardException {
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest sha = MessageDigest.getInstance("SHA-256");
            byte[] part = new byte[1 << 16];
            for (int read = in.read(part); read >= 0; read = in.read(part)) {
                sha.update(part, 0, read);
            }
            return HexFormat.of().formatHex(sha.digest());
        } catch (IOException e) {
            throw CardException.unreadable(
                    file + " cannot be read (" + e.getMessage() + ")", "Check its rights and the disk it is on.", e);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private static DoubleStream values(List<Sample> samples, Function<Sample, OptionalDouble> value) {
        return samples.stream().map(value).flatMapToDouble(OptionalDouble::stream);
    }

    private static OptionalDouble timeToHot(List<Sample> samples) {
        double start = samples.get(0).seconds();
        return samples.stream()
                .filter(sample -> sample.celsius().orElse(0) >= HOT)
                .mapToDouble(sample -> sample.seconds() - start)
                .findFirst();
    }

    /** A throttle mask in words, lowest bit number first; bits that no table knows by their numbers. */
    public static List<String> words(long mask, ThrottleBits known) {
        List<String> words = new ArrayList<>(
                known.decode(mask).stream().map(ThrottleBit::meaning).toList());
        long unknown = known.unknown(mask);
        if (unknown != 0) {
            words.add("bits without a published meaning: " + ThrottleMask.text(unknown));
        }
        return words;
    }
}
