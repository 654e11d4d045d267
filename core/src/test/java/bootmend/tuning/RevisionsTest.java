package bootmend.tuning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Source: "Revision codes", revision-codes.adoc, commit 0456a78c; where a test says so, a value from memory. */
class RevisionsTest {

    private final Revisions revisions = TuningTables.load().revisions();

    /** The source's worked example and its table; 0x11 is pi4, 0x08 is pi3, 0x12 is pi02. */
    @ParameterizedTest
    @CsvSource({
        "c03111, 0x11, 1, pi4, BCM2711, 4096, 0",
        "a02082, 0x08, 2, pi3, BCM2837, 1024, 0",
        "d03114, 0x11, 4, pi4, BCM2711, 8192, 0",
        "902120, 0x12, 0, pi02, BCM2837, 512, 0",
    })
    void workedExamples(String code, String type, int revision, String board, String chip, int memory, int maker) {
        Revision decoded = revisions.decode(code);

        assertThat(decoded.newStyle()).isTrue();
        assertThat(decoded.type()).hasValue(Integer.decode(type));
        assertThat(decoded.number()).hasValue(revision);
        assertThat(decoded.name()).isEqualTo("1." + revision);
        assertThat(decoded.board().orElseThrow().id()).isEqualTo(board);
        assertThat(decoded.chip()).contains(chip);
        assertThat(decoded.memoryMegabytes()).hasValue(memory);
        assertThat(decoded.maker()).hasValue(maker);
        assertThat(decoded.barred()).isEmpty();
        assertThat(decoded.unknownBits()).isZero();
        assertThat(decoded.codeText()).isEqualTo(code);
    }

    @ParameterizedTest
    @CsvSource({
        "0x800000, 256",
        "0x900000, 512",
        "0xa00000, 1024",
        "0xb00000, 2048",
        "0xc00000, 4096",
        "0xd00000, 8192",
        "0xe00000, 16384"
    })
    void memoryDoublesFrom256MegabytesTo16Gigabytes(String code, int megabytes) {
        assertThat(revisions.decode(code).memoryMegabytes()).hasValue(megabytes);
    }

    @Test
    void memorySevenIsOther() {
        assertThat(revisions.decode("f00000").memoryMegabytes()).isEmpty();
    }

    @Test
    void theMakerIsANumber() {
        assertThat(revisions.decode("a22082").maker()).hasValue(2);
        assertThat(revisions.decode("a52082").maker()).hasValue(5);
    }

    @Test
    void bit25IsTheWarrantyBit() {
        assertThat(revisions.decode("2a02082").warranty()).isEqualTo(WarrantyState.SET);
        assertThat(revisions.decode("a02082").warranty()).isEqualTo(WarrantyState.NOT_SET);
    }

    /** The source's footnote on the warranty bit. */
    @Test
    void theWarrantyBitIsNeverSetOnPi4() {
        assertThat(revisions.decode("c03111").warranty()).isEqualTo(WarrantyState.NEVER_SET);
    }

    @Test
    void whereTheWarrantyBitIsNotPublishedThatIsSaid() {
        assertThat(revisions.decode("d04170").warranty()).isEqualTo(WarrantyState.NOT_PUBLISHED);
        assertThat(revisions.decode("c03ff0").warranty()).isEqualTo(WarrantyState.NOT_PUBLISHED);
    }

    @Test
    void bits29To31BarThings() {
        assertThat(revisions.decode("20a02082").barred()).containsExactly(RevisionFlag.OTP_READ_BARRED);
        assertThat(revisions.decode("40a02082").barred()).containsExactly(RevisionFlag.OTP_PROGRAM_BARRED);
        assertThat(revisions.decode("80a02082").barred()).containsExactly(RevisionFlag.OVER_VOLTAGE_BARRED);
        assertThat(revisions.decode("e2a02082").barred()).containsExactly(RevisionFlag.values());
        assertThat(revisions.decode("e2a02082").unknownBits()).isZero();
    }

    @Test
    void setBitsWithoutPublishedMeaningAreHandedBack() {
        assertThat(revisions.decode("1da02082").unknownBits()).isEqualTo(0x1d000000L);
    }

    @Test
    void anUnknownTypeIsNoBoard() {
        Revision decoded = revisions.decode("c0fff1");

        assertThat(decoded.board()).isEmpty();
        assertThat(decoded.type()).hasValue(0xff);
        assertThat(decoded.chip()).isEmpty();
        assertThat(decoded.memoryMegabytes()).hasValue(4096);
    }

    /** Values from memory. */
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "0002, pi1, 1.0, 256", "0003, pi1, 1.0, 256", "0004, pi1, 2.0, 256", "0005, pi1, 2.0, 256",
                "0006, pi1, 2.0, 256", "0007, pi1, 2.0, 256", "0008, pi1, 2.0, 256", "0009, pi1, 2.0, 256",
                "000d, pi1, 2.0, 512", "000e, pi1, 2.0, 512", "000f, pi1, 2.0, 512", "0010, pi1, 1.2, 512",
                "0011, cm1, 1.0, 512", "0012, pi1, 1.1, 256", "0013, pi1, 1.2, 512", "0014, cm1, 1.0, 512",
                "0015, pi1, 1.1, -",
            })
    void oldStyleCodes(String code, String board, String revision, Integer memory) {
        Revision decoded = revisions.decode(code);

        assertThat(decoded.newStyle()).isFalse();
        assertThat(decoded.board().orElseThrow().id()).isEqualTo(board);
        assertThat(decoded.name()).isEqualTo(revision);
        assertThat(decoded.chip()).contains("BCM2835");
        if (memory == null) {
            assertThat(decoded.memoryMegabytes()).isEmpty();
        } else {
            assertThat(decoded.memoryMegabytes()).hasValue(memory);
        }
        assertThat(decoded.warranty()).isEqualTo(WarrantyState.NOT_SET);
        assertThat(decoded.unknownBits()).isZero();
        assertThat(decoded.codeText()).isEqualTo(code);
    }

    /** Value from memory: bit 24 in front of an old-style code. */
    @Test
    void theWarrantyBitOfAnOldStyleCode() {
        Revision decoded = revisions.decode("100000e");

        assertThat(decoded.board().orElseThrow().id()).isEqualTo("pi1");
        assertThat(decoded.warranty()).isEqualTo(WarrantyState.SET);
    }

    @Test
    void anUnknownOldStyleCodeIsNoBoard() {
        Revision decoded = revisions.decode("00ff");

        assertThat(decoded.board()).isEmpty();
        assertThat(decoded.name()).isEqualTo("unknown");
        assertThat(decoded.unknownBits()).isEqualTo(0xff);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "0x", "xyz", "c03111 ", "-1", "123456789"})
    void whatIsNoCodeIsRefused(String text) {
        assertThatThrownBy(() -> revisions.decode(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("such as c03111");
    }
}
