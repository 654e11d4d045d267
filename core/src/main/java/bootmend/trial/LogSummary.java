package bootmend.trial;

import bootmend.CardException;
import bootmend.tuning.ThrottleBit;
import bootmend.tuning.ThrottleBits;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
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
 * @param interrupted whether the log has more rows than are read
 * @param gaps how many gaps there are
 * @param gapMinutes how long they are together
 * @param minutes time that the rows stand for
 * @param setClock clock that the log is held against, in MHz; empty where it has no clocks
 * @param setClockGiven whether that one was given; else it is the highest in the log
 * @param minutesAtFullClock time at 98 % of the set clock or more
 * @param shareBelow share of the time with a clock that was below that, 0 to 1
 * @param meanClock over the time, in MHz
 * @param peak highest temperature, in degC
 * @param secondsTo80 from the first row to the first at 80 degC or more
 * @param minVolts lowest voltage, in V
 * @param maxVolts highest voltage, in V
 * @param mask every throttle bit that was seen; empty where the log has no masks
 * @param bits the same in words, oldest bit number first; bits that no table knows included
 */
public record LogSummary(
        int rows,
        long badRows,
        List<String> problems,
        boolean interrupted,
        int gaps,
        double gapMinutes,
        double minutes,
        OptionalDouble setClock,
        boolean setClockGiven,
        OptionalDouble minutesAtFullClock,
        OptionalDouble shareBelow,
        OptionalDouble meanClock,
        OptionalDouble peak,
        OptionalDouble secondsTo80,
        OptionalDouble minVolts,
        OptionalDouble maxVolts,
        OptionalLong mask,
        List<String> bits) {

    /** Where boards begin to slow down and which a trial should stay below, in degC (common practice, no source). */
    public static final double HOT = 80;
    /** A measured clock wavers; this much of the set clock is full clock (common practice, no source). */
    static final double FULL = 0.98;

    private static final double MINUTE = 60;

    public LogSummary {
        problems = List.copyOf(problems);
        bits = List.copyOf(bits);
    }

    /**
     * Reads a log and sums it up.
     *
     * @param setClock clock that was set, in MHz; where empty, the highest in the log
     * @throws CardException if the file is no log
     */
    public static LogSummary read(Path file, OptionalDouble setClock, ThrottleBits bits) throws CardException {
        return of(LogReader.read(file), setClock, bits);
    }

    static LogSummary of(BoardLog log, OptionalDouble given, ThrottleBits known) {
        List<Sample> samples = log.samples();
        OptionalDouble highest = values(samples, Sample::clock).max();
        OptionalDouble setClock = given.isPresent() ? given : highest;
        LogTime time = LogTime.of(samples, setClock.orElse(0) * FULL);
        OptionalLong mask = samples.stream()
                .filter(sample -> sample.mask().isPresent())
                .mapToLong(sample -> sample.mask().getAsLong())
                .reduce((a, b) -> a | b);
        return new LogSummary(
                samples.size(),
                log.badRows(),
                log.problems(),
                log.interrupted(),
                time.gaps(),
                time.gapSeconds() / MINUTE,
                time.seconds() / MINUTE,
                setClock,
                given.isPresent(),
                time.withClock(time.fullSeconds() / MINUTE),
                time.withClock(1 - time.fullSeconds() / time.clockSeconds()),
                time.withClock(time.megacycles() / time.clockSeconds()),
                values(samples, Sample::celsius).max(),
                timeToHot(samples),
                values(samples, Sample::volts).min(),
                values(samples, Sample::volts).max(),
                mask,
                mask.isEmpty() ? List.of() : words(mask.getAsLong(), known));
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
