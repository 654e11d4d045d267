package bootmend.config;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/**
 * Line kinds. Source: "File format", config_txt/what_is_config_txt.adoc, commit 57ad5821; where a test says so: a
 * Linux distributor's boards documentation, "Edit the boot configuration", section on format.
 */
class LineClassifierTest {

    @Test
    void aSettingIsKeyEqualsValue() {
        LineKind.Setting setting = setting("arm_freq=2000");

        assertThat(setting.key()).isEqualTo("arm_freq");
        assertThat(setting.value()).isEqualTo("2000");
        assertThat(setting.keyBytes()).isEqualTo(new ByteRange(0, 8));
        assertThat(setting.valueBytes()).isEqualTo(new ByteRange(9, 13));
        assertThat(setting.hasBlankBesideEquals()).isFalse();
    }

    @Test
    void onlyTheFirstEqualsSignCounts() {
        assertThat(setting("dtparam=spi=on").key()).isEqualTo("dtparam");
        assertThat(setting("dtparam=spi=on").value()).isEqualTo("spi=on");
    }

    @Test
    void aHashAtTheStartMakesAComment() {
        assertThat(kind("# robots of room 4")).isEqualTo(new LineKind.Comment());
        assertThat(kind("#")).isEqualTo(new LineKind.Comment());
        assertThat(kind("# speed = high")).isEqualTo(new LineKind.Comment());
        assertThat(kind("#=3")).isEqualTo(new LineKind.Comment());
    }

    @Test
    void aCommentThatWouldBeASettingIsToldApart() {
        assertThat(kind("#arm_freq=2000")).isEqualTo(new LineKind.CommentedSetting("arm_freq", "2000"));
        assertThat(kind("# arm_freq=2000")).isEqualTo(new LineKind.CommentedSetting("arm_freq", "2000"));
        assertThat(kind("##arm_freq=2000")).isEqualTo(new LineKind.CommentedSetting("arm_freq", "2000"));
    }

    /** Source: the distributor's page, section on format. */
    @Test
    void aCommentCannotTrailASetting() {
        assertThat(setting("arm_freq=2000 # fast").value()).isEqualTo("2000 # fast");
    }

    /** Source: the distributor's page, section on format. */
    @Test
    void quotesAreNotTakenOff() {
        assertThat(setting("arm_freq=\"2000\"").value()).isEqualTo("\"2000\"");
    }

    /** Source: the distributor's page, section on format. */
    @Test
    void blanksBesideEqualsArePartOfKeyAndValue() {
        LineKind.Setting setting = setting("arm_freq = 2000");

        assertThat(setting.key()).isEqualTo("arm_freq ");
        assertThat(setting.trimmedKey()).isEqualTo("arm_freq");
        assertThat(setting.value()).isEqualTo(" 2000");
        assertThat(setting.hasBlankBesideEquals()).isTrue();
        assertThat(setting("arm_freq= 2000").hasBlankBesideEquals()).isTrue();
    }

    /** No source: the careful reading. */
    @Test
    void blanksBeforeTheKeyAreSkipped() {
        assertThat(setting(" \tarm_freq=2000").key()).isEqualTo("arm_freq");
        assertThat(setting(" \tarm_freq=2000").keyBytes()).isEqualTo(new ByteRange(2, 10));
        assertThat(kind("  # note")).isEqualTo(new LineKind.Comment());
        assertThat(kind("  [pi4]")).isEqualTo(new LineKind.Section("[pi4]"));
    }

    @Test
    void caseIsKept() {
        assertThat(setting("Arm_Freq=2000").key()).isEqualTo("Arm_Freq");
    }

    @Test
    void aBracketOpensASection() {
        assertThat(kind("[pi4] ")).isEqualTo(new LineKind.Section("[pi4]"));
        assertThat(kind("[EDID=VSC-TD2220]")).isEqualTo(new LineKind.Section("[EDID=VSC-TD2220]"));
        assertThat(kind("[pi4")).isEqualTo(new LineKind.Section("[pi4"));
    }

    @Test
    void includeNamesAFile() {
        assertThat(kind("include  bench.txt ")).isEqualTo(new LineKind.Include("bench.txt"));
        assertThat(kind("include")).isEqualTo(new LineKind.Other());
        assertThat(kind("include ")).isEqualTo(new LineKind.Other());
        assertThat(kind("includes bench.txt")).isEqualTo(new LineKind.Other());
        assertThat(setting("include=bench.txt").key()).isEqualTo("include");
    }

    /** Source: "Boot options", config_txt/boot.adoc, commit f6839a6f. */
    @Test
    void initramfsHasNoEqualsSign() {
        assertThat(kind("initramfs rd.gz 0x00800000")).isEqualTo(new LineKind.Other());
        assertThat(kind("initramfs rd=lab.gz followkernel")).isEqualTo(new LineKind.Other());
    }

    @Test
    void bytesWithoutMeaningAreOther() {
        assertThat(kind("\0\0\0\0")).isEqualTo(new LineKind.Other());
        assertThat(kind("=2000")).isEqualTo(new LineKind.Other());
        assertThat(kind("arm_freq")).isEqualTo(new LineKind.Other());
    }

    @Test
    void blankLines() {
        assertThat(kind("")).isEqualTo(new LineKind.Blank());
        assertThat(kind(" \t ")).isEqualTo(new LineKind.Blank());
    }

    @Test
    void onlyTheFirst98BytesAreRead() {
        String padding = "0".repeat(98 - "arm_freq=".length());
        assertThat(setting("arm_freq=" + padding).value()).isEqualTo(padding);

        LineKind.Setting cut = setting("arm_freq=" + padding + "7");
        assertThat(cut.value()).isEqualTo(padding);
        assertThat(cut.valueBytes()).isEqualTo(new ByteRange(9, 99));
    }

    @Test
    void anEqualsSignPastTheLimitIsNotSeen() {
        assertThat(setting("k".repeat(97) + "=1").value()).isEmpty();
        assertThat(kind("k".repeat(98) + "=1")).isEqualTo(new LineKind.Other());
        assertThat(kind(" ".repeat(98) + "arm_freq=2000")).isEqualTo(new LineKind.Blank());
    }

    private static LineKind.Setting setting(String line) {
        return (LineKind.Setting) kind(line);
    }

    private static LineKind kind(String line) {
        return LineClassifier.classify(line.getBytes(StandardCharsets.UTF_8));
    }
}
