package bootmend.trial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import bootmend.CardException;
import bootmend.StepNames;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.nio.file.Path;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Logs by hand-worked rows. */
class LogTest {

    private static final String HEAD = "time,clock_mhz,volts,temperature,mask\n";

    @Test
    void sumsUpWhatEachRowStandsFor() throws CardException, IOException {
        LogSummary log = sum(
                HEAD
                        + "0,2000,0.95,50,0x0\n"
                        + "60,2000,0.95,70,0x0\n"
                        + "120,1500,0.93,80.5,0x80008\n"
                        + "180,2000,0.94,79,0x80000\n",
                OptionalDouble.of(2000));

        assertThat(log.rows()).isEqualTo(4);
        assertThat(log.minutes()).isEqualTo(3);
        assertThat(log.minutesAtFullClock()).hasValue(2);
        assertThat(log.shareBelow().orElseThrow()).isCloseTo(1.0 / 3, within(1e-12));
        assertThat(log.meanClock().orElseThrow()).isCloseTo(5500.0 / 3, within(1e-9));
        assertThat(log.peak()).hasValue(80.5);
        assertThat(log.secondsTo80()).hasValue(120);
        assertThat(log.minVolts()).hasValue(0.93);
        assertThat(log.maxVolts()).hasValue(0.95);
        assertThat(log.mask()).hasValue(0x80008);
        assertThat(log.bits())
                .containsExactly("soft temperature limit active now", "soft temperature limit since boot");
        assertThat(log.gaps()).isZero();
        assertThat(log.badRows()).isZero();
    }

    @Test
    void everyBitSeenIsToldInWordsAndUnknownOnesByNumber() throws CardException, IOException {
        LogSummary log = sum(HEAD + "0,2000,,50,0x1\n5,2000,,50,50000\n10,2000,,50,0x100\n", OptionalDouble.empty());

        assertThat(log.bits())
                .containsExactly(
                        "supply under-voltage now",
                        "supply under-voltage since boot",
                        "throttled since boot",
                        "bits without a published meaning: 0x100");
    }

    @Test
    void aGapCountsForNothing() throws CardException, IOException {
        LogSummary log = sum(
                HEAD + "0,2000,,50,\n10,2000,,50,\n20,2000,,50,\n620,2000,,50,\n630,2000,,50,\n",
                OptionalDouble.of(2000));

        assertThat(log.gaps()).isEqualTo(1);
        assertThat(log.gapMinutes()).isEqualTo(10);
        assertThat(log.minutes()).isEqualTo(0.5);
        assertThat(log.mask()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Time, Clock MHz ,Volts,Temperature,Mask",
                "TIMESTAMP,clock (MHz),V,temp_C,throttled",
                "mask,time,ignored,clock,temp",
                "seconds,MHz,Temp [degC]"
            })
    void headsAreReadTolerantly(String head) throws CardException, IOException {
        assertThat(LogReader.read("log.csv", new StringReader(head + "\n" + "1,1,1,50,0\n".repeat(1)))
                        .samples())
                .hasSize(1);
    }

    @Test
    void columnsAreFoundByNameNotByPlace() throws CardException, IOException {
        Sample sample = LogReader.read(
                        "log.csv", new StringReader("\uFEFF# a comment\r\nmask,temp,time,clock\r\n0x4,61.5,9,1800\r\n"))
                .samples()
                .get(0);

        assertThat(sample.seconds()).isEqualTo(9);
        assertThat(sample.celsius()).hasValue(61.5);
        assertThat(sample.clock()).hasValue(1800);
        assertThat(sample.mask()).hasValue(4);
        assertThat(sample.volts()).isEmpty();
    }

    @Test
    void timesOfTheCalendarAreReadToo() throws CardException, IOException {
        LogSummary log =
                sum("time,clock\n2026-11-02T09:00:00Z,2000\n2026-11-02T09:00:30.5Z,2000\n", OptionalDouble.empty());

        assertThat(log.minutes()).isCloseTo(30.5 / 60, within(1e-6));
        assertThat(log.setClock()).hasValue(2000);
        assertThat(log.setClockGiven()).isFalse();
        assertThat(log.peak()).isEmpty();
    }

    @Test
    void badRowsAreLeftOutCountedAndTold() throws CardException, IOException {
        BoardLog log = LogReader.read(
                "log.csv",
                new StringReader(HEAD
                        + "0,2000,,50,\n"
                        + "0,2000,,50,\n"
                        + "five,2000,,50,\n"
                        + "6,,,,\n"
                        + "7,0.5,,50,\n"
                        + "8,2000,,\"50,\n"
                        + "9,2000,,50,0xZZ\n"
                        + "10,2000,,50," + "x".repeat(5000) + "\n"
                        + "11,2000,,999,\n"
                        + "12,2000,,51,\n"));

        assertThat(log.samples()).hasSize(2);
        assertThat(log.badRows()).isEqualTo(8);
        assertThat(log.problems())
                .containsExactly(
                        "line 3: its time does not come after that of the row before",
                        "line 4: it has text where a number should be",
                        "line 5: it has neither clock nor temperature",
                        "line 6: the clock should be 1 to 10000 MHz, found 0.5",
                        "line 7: its quotes do not match",
                        "line 8: its mask is no hexadecimal number",
                        "line 9: it is longer than 1000 characters",
                        "line 10: the peak temperature should be -60 to 200 degC, found 999.0");
    }

    /** Lines of the board's own query command: public threads of users; the unit of a clock is Hz, S1 of tuning/sources.csv. */
    @Test
    void readsWhatBoardsPrint() throws CardException, IOException {
        BoardLog log = read("time,clock,volts,temp,throttled\n"
                + "1764671400,frequency(48)=1900007424,volt=0.9460V,temp=65.2'C,throttled=0x0\n"
                + "1764671430,1900000,946mV,65200,0x50005\n");

        assertThat(log.problems()).isEmpty();
        assertThat(log.samples().get(0).clock().orElseThrow()).isCloseTo(1900, within(0.01));
        assertThat(log.samples().get(0).volts()).hasValue(0.946);
        assertThat(log.samples().get(0).celsius()).hasValue(65.2);
        assertThat(log.samples().get(1).clock()).hasValue(1900);
        assertThat(log.samples().get(1).volts()).hasValue(0.946);
        assertThat(log.samples().get(1).celsius()).hasValue(65.2);
        assertThat(log.samples().get(1).mask()).hasValue(0x50005);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "time;clock;temp\n2026-11-02 09:00:00;1900 MHz;65,2\n2026-11-02 09:00:30;1900 MHz;65,4\n",
                "Time\tClock\tTemp\n2026-11-02T09:00:00\t1900\t65,2\n2026-11-02T09:00:30\t1900\t65.4\n",
                "timestamp,mhz,degC\n2026-11-02 09:00:00+01:00,1900,65.2\n2026-11-02 09:00:30+01:00,1900,65.4\n",
                "epoch,mhz,degC\n1764671400000,1900,65.2\n1764671430000,1900,65.4\n",
                "date,mhz,degC\n2026-11-02 09:00:00 UTC,1900,65.2C\n2026-11-02 09:00:30.0Z,1900,65.4 \u00b0C\n"
            })
    void readsWhatPeopleWrite(String text) throws CardException, IOException {
        BoardLog log = read(text);

        assertThat(log.problems()).isEmpty();
        assertThat(log.samples().get(1).seconds() - log.samples().get(0).seconds())
                .isCloseTo(30, within(0.001));
        assertThat(log.samples().get(1).celsius()).hasValue(65.4);
        assertThat(log.samples().get(1).clock()).hasValue(1900);
    }

    @Test
    void aTornLastRowAndBytesOfAPowerLossDoNotCount() throws CardException, IOException {
        BoardLog log = read("time,clock,temp\n0,1900,65\n5,1900,66\n\0\0\0\0\n10,1900,6");

        assertThat(log.samples()).hasSize(2);
        assertThat(log.badRows()).isEqualTo(2);
        assertThat(log.problems())
                .containsExactly(
                        "line 4: it has bytes that are no text",
                        "line 5: it has no line end, so that its last figure may be torn");
    }

    @Test
    void anotherStartOfTheBoardIsTold() throws CardException, IOException {
        BoardLog log = read("uptime,clock\n100,1900\n105,1900\nuptime,clock\n20,1900\n25,1900\n30,1900\n");

        assertThat(log.restarts()).containsExactly(2);
        assertThat(log.badRows()).isZero();
        assertThat(log.samples()).hasSize(5);
        assertThat(LogSummary.of(log, OptionalDouble.of(1900), LabTrials.TABLES.throttleBits())
                        .restarts())
                .isEqualTo(1);
    }

    @Test
    void oneRowThatGoesBackIsNoOtherStart() throws CardException, IOException {
        BoardLog log = read("uptime,clock\n100,1900\n105,1900\n20,1900\n110,1900\n");

        assertThat(log.restarts()).isEmpty();
        assertThat(log.badRows()).isEqualTo(1);
        assertThat(log.samples()).hasSize(3);
    }

    @Test
    void aLogSaysWhereItsFiguresComeFrom() throws CardException, IOException {
        String hex = "0123456789abcdef".repeat(4);
        BoardLog log = read("# source: clock by the firmware's own measure\n# config: tryboot.txt sha256 " + hex
                + "\n# try-once: yes\n# config: ../evil sha256 " + hex + "\ntime,clock\n0,1900\n5,1900\n");

        assertThat(log.clues().sources()).containsExactly("clock by the firmware's own measure");
        assertThat(log.clues().configs()).containsExactly("tryboot.txt sha256 " + hex);
        assertThat(log.clues().tryOnce()).contains(true);
    }

    private static BoardLog read(String text) throws CardException, IOException {
        return LogReader.read("log.csv", new StringReader(text));
    }

    @Test
    void readsAMillionRowsAndNoMore() throws CardException, IOException {
        BoardLog log =
                LogReader.read("log.csv", new Repeating("time,temp\n", "-1,50\n", LogReader.MAX_ROWS + 5, "1,50\n"));

        assertThat(log.cutShort()).isTrue();
        assertThat(log.badRows() + log.samples().size()).isEqualTo(LogReader.MAX_ROWS);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "\n\n", "time,volts\n1,2\n", "0,2000,,50,\n", HEAD, HEAD + "x\n", "\"time,clock\n1,2\n"})
    void whatIsNoLogIsRefusedWithWhatToDo(String text) {
        assertThatThrownBy(() -> LogReader.read("log.csv", new StringReader(text)))
                .isInstanceOfSatisfying(CardException.class, e -> {
                    assertThat(e.getMessage()).contains("log.csv");
                    assertThat(new StepNames().remedy(e)).isNotBlank();
                });
    }

    @Test
    void aMissingLogIsRefused() {
        assertThatThrownBy(() -> LogReader.read(Path.of("nowhere.csv")))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("there is no log file");
    }

    @Property(tries = 300)
    void noTextIsACrash(@ForAll String rows) throws IOException {
        try {
            assertThat(LogReader.read("log.csv", new StringReader(HEAD + "0,2000,,50,\n" + rows))
                            .samples())
                    .isNotEmpty();
        } catch (CardException e) {
            assertThat(e).hasMessageContaining("log.csv");
        }
    }

    @Test
    void aLogOfOneRowStandsForNoTime() throws CardException, IOException {
        LogSummary log = sum(HEAD + "5,2000,,81,\n", OptionalDouble.of(2000));

        assertThat(log.minutes()).isZero();
        assertThat(log.minutesAtFullClock()).isEmpty();
        assertThat(log.secondsTo80()).hasValue(0);
    }

    private static LogSummary sum(String text, OptionalDouble clock) throws CardException, IOException {
        return LogSummary.of(LogReader.read("log.csv", new StringReader(text)), clock, LabTrials.TABLES.throttleBits());
    }

    /** A long text that is never all in memory: a head, a first row, and one row again and again. */
    private static final class Repeating extends Reader {

        private final StringReader start;
        private final String row;
        private long left;

        Repeating(String head, String row, long rows, String first) {
            this.start = new StringReader(head + first);
            this.row = row;
            this.left = rows * row.length();
        }

        @Override
        public int read(char[] buffer, int offset, int length) throws IOException {
            int begun = start.read(buffer, offset, length);
            if (begun > 0 || left == 0) {
                return begun > 0 ? begun : -1;
            }
            int count = (int) Math.min(left, Math.min(length, row.length()));
            int from = (int) (row.length() - (left - 1) % row.length() - 1);
            int some = Math.min(count, row.length() - from);
            row.getChars(from, from + some, buffer, offset);
            left -= some;
            return some;
        }

        @Override
        public void close() {
            start.close();
        }
    }
}
